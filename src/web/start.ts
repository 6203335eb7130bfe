/**
 * The first script of the built page, a classic one: it brings in the page's code by where the page lies. From a server that
 * is a module, whose parts are loaded when they are asked for. From the disk (`file:`) browsers refuse modules and threads
 * of files (HTML, "opaque origins"): there it is one classic script that has everything in it.
 */
const { page = "", needs = "", fromDisk = "" } = document.currentScript?.dataset ?? {};
const script = document.createElement("script");
if (window.location.protocol === "file:") script.src = fromDisk;
else {
  script.type = "module";
  script.src = page;
  for (const href of needs.split(" ").filter((each) => each !== "")) {
    const link = document.createElement("link");
    link.rel = "modulepreload";
    link.href = href;
    document.head.append(link);
  }
}
// what stands in the page until it starts says what to do
script.addEventListener("error", () => document.querySelector(".not-started")?.classList.add("for-good"));
document.head.append(script);

export {};
