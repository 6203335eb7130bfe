/** `rodplate open`: what its server answers, to whom, and what it lets be read and written. Raw requests, as a hostile neighbour sends them. */
import { spawn } from "node:child_process";
import { createHash } from "node:crypto";
import { mkdirSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { connect } from "node:net";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { openerOf } from "../../src/cli/serve-browser.js";
import { type PageServer, startPageServer } from "../../src/cli/serve-files.js";
import { serveJob } from "../../src/cli/serve-job.js";
import { pageFiles } from "../../src/cli/serve-page.js";
import { MAIN, newFolder, runProcess, runProgram, writeJob } from "./program.js";

const SECRET = "a file of somebody's that no job names";
let folder: string;
let server: PageServer;

beforeEach(async () => {
  folder = newFolder();
  mkdirSync(join(folder, "job"));
  writeFileSync(join(folder, "secret.txt"), SECRET);
  writeFileSync(join(folder, "job", "beside.txt"), SECRET);
  writeJob(join(folder, "job"), "job.yaml");
  server = await serve("job.yaml");
});
afterEach(async () => {
  await server.close();
  rmSync(folder, { recursive: true, force: true });
});

async function serve(name: string): Promise<PageServer> {
  const job = serveJob(name, join(folder, "job"));
  const pages = pageFiles(job.ok ? job.value.key : null);
  if (!job.ok || pages === null) throw new Error("nothing to serve; npm run build makes the page");
  return startPageServer({ pages, job: job.value, port: 0 });
}

interface Answer {
  readonly status: number;
  readonly headers: ReadonlyMap<string, string>;
  readonly body: string;
}

const portOf = (): number => Number(new URL(server.address).port);

/** Sends bytes as they are, and reads until the server ends the connection. */
function sendRaw(text: string | Uint8Array): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const socket = connect(portOf(), "127.0.0.1", () => socket.write(text));
    const chunks: Buffer[] = [];
    socket.on("data", (chunk) => chunks.push(chunk));
    socket.on("error", (error) => (chunks.length > 0 ? undefined : reject(error)));
    socket.on("close", () => {
      const all = Buffer.concat(chunks).toString("utf8");
      const [head = "", ...body] = all.split("\r\n\r\n");
      const [line = "", ...lines] = head.split("\r\n");
      const headers = lines.map((one): [string, string] => {
        const colon = one.indexOf(":");
        return [one.slice(0, colon).toLowerCase(), one.slice(colon + 1).trim()];
      });
      resolve({ status: Number(line.split(" ")[1]), headers: new Map(headers), body: body.join("\r\n\r\n") });
    });
  });
}

type Headers = Readonly<Record<string, string | null>>;

/** As the page itself asks, but for what `headers` has otherwise; null: without it. */
function ask(
  target: string,
  { method = "GET", body = "", ...rest }: { method?: string; body?: string; headers?: Headers } = {},
) {
  const own = {
    host: `127.0.0.1:${portOf()}`,
    "sec-fetch-site": "same-origin",
    origin: `http://127.0.0.1:${portOf()}`,
  };
  const sized = body === "" ? {} : { "content-length": String(Buffer.byteLength(body)) };
  const headers = Object.entries({ ...own, ...sized, connection: "close", ...rest.headers });
  const lines = headers.flatMap(([name, value]) => (value === null ? [] : [`${name}: ${value}`]));
  return sendRaw(`${method} ${target} HTTP/1.1\r\n${lines.join("\r\n")}\r\n\r\n${body}`);
}

const hashOf = (text: string | Uint8Array): string => createHash("sha256").update(text).digest("hex");
const jobText = (): string => readFileSync(join(folder, "job", "job.yaml"), "utf8");
const LOAD: Headers = {
  origin: null,
  "sec-fetch-site": "none",
  "sec-fetch-mode": "navigate",
  "sec-fetch-dest": "document",
};

describe("the page is served", () => {
  it("with a policy that runs nothing but its own files, and is told that a job comes with it", async () => {
    const { status, headers, body } = await ask("/", { headers: LOAD });
    expect(status).toBe(200);
    const policy = headers.get("content-security-policy") ?? "";
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("script-src 'self';");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).not.toMatch(/unsafe|\*|http:|https:|data:/);
    expect(headers.get("x-content-type-options")).toBe("nosniff");
    expect(headers.get("referrer-policy")).toBe("no-referrer");
    expect(body).toMatch(/<meta name="rodplate-job" content="[0-9a-f]{64}" \/>/);
    expect(body).not.toContain(folder);
    const inPage = /http-equiv="Content-Security-Policy"\s+content="([^"]+)"/.exec(body)?.[1];
    // threads of texts are for pages that are opened from the disk
    expect(policy.startsWith(inPage?.replace(" blob:; base-uri", "; base-uri") ?? "none")).toBe(true);
  });

  it("every file that the page loads, to the page; its head alone where that is asked for", async () => {
    const { body } = await ask("/", { headers: LOAD });
    const paths = [...body.matchAll(/[" ]\.\/([^" ]+)/g)].map(([, path]) => `/${path}`);
    expect(paths.length).toBeGreaterThan(2);
    for (const path of paths) {
      const whole = await ask(path);
      expect([path, whole.status]).toEqual([path, 200]);
      const head = await ask(path, { method: "HEAD" });
      expect([head.status, head.body]).toEqual([200, ""]);
      expect(head.headers.get("content-length")).toBe(whole.headers.get("content-length"));
    }
  });

  it("from another page's link: only the page itself", async () => {
    const linked = { ...LOAD, "sec-fetch-site": "cross-site" };
    expect((await ask("/", { headers: linked })).status).toBe(200);
    expect((await ask("/job", { headers: linked })).status).toBe(403);
  });
});

describe("nobody but the page is answered", () => {
  it.each([
    ["a name that leads here by its name server", { host: "evil.example:PORT" }],
    ["another port", { host: "127.0.0.1:1" }],
    ["no port", { host: "127.0.0.1" }],
    ["another address", { host: "0.0.0.0:PORT" }],
    ["an origin of another port", { origin: "http://127.0.0.1:1" }],
    ["an origin that is secure", { origin: "https://127.0.0.1:PORT" }],
    ["an origin without a name", { origin: "null" }],
    ["a page of another site", { origin: null, "sec-fetch-site": "cross-site" }],
    ["a page of the same site, as of another port", { origin: null, "sec-fetch-site": "same-site" }],
    ["nobody knows who", { origin: null, "sec-fetch-site": null }],
    ["a person who typed the address", { origin: null, "sec-fetch-site": "none" }],
  ] as [string, Headers][])("%s", async (_, headers) => {
    const put = Object.entries(headers).map(([name, value]) => [
      name,
      value?.replace("PORT", String(portOf())) ?? null,
    ]);
    const sent = Object.fromEntries(put) as Headers;
    const before = jobText();
    const read = await ask("/job", { headers: sent });
    const write = await ask("/job", {
      method: "PUT",
      body: "a: 1\n",
      headers: { ...sent, "if-match": `"${hashOf(before)}"` },
    });
    expect([read.status, write.status]).toEqual([403, 403]);
    expect(read.body + write.body).not.toContain("bases:");
    expect(jobText()).toBe(before);
  });

  it("names of this machine are ours, in any letters", async () => {
    for (const host of [`localhost:${portOf()}`, `LOCALHOST:${portOf()}`, `[::1]:${portOf()}`])
      expect((await ask("/job", { headers: { host, origin: `http://${host}` } })).status).toBe(200);
  });

  it.each(["POST", "DELETE", "OPTIONS", "PATCH", "TRACE", "MKCOL"])("%s is no way to ask", async (method) => {
    const { status, headers } = await ask("/job", { method });
    expect([status, headers.get("allow")]).toEqual([405, "GET, HEAD, PUT"]);
    expect(headers.get("access-control-allow-origin")).toBeUndefined();
  });
});

describe("no other file is read", () => {
  it.each([
    "/../secret.txt",
    "/..%2fsecret.txt",
    "/%2e%2e/secret.txt",
    "/%2e%2e%2f%2e%2e%2fetc/passwd",
    "/assets/../../../../etc/passwd",
    "/assets/%2e%2e/%2e%2e/package.json",
    "/..\\..\\secret.txt",
    "/..%5c..%5csecret.txt",
    "/%00",
    "/index.html%00.js",
    "//etc/passwd",
    "/assets/",
    "/assets",
    "/job/",
    "/job/job.yaml",
    "/job/beside.txt",
    "/job/beside/",
    "/job/beside/beside.txt",
    "/job/beside/job.yaml",
    "/job/beside/..%2f..%2fsecret.txt",
    "/job/beside/../../secret.txt",
    "/job/beside/%2e%2e%2fsecret.txt",
    "/job/beside/%2fetc%2fpasswd",
    "/job/beside/%E0%A4%A",
    "/job/../beside.txt",
    "/job%2f..%2fbeside.txt",
  ])("%s", async (target) => {
    const { status, body } = await ask(target);
    expect(status).toBe(404);
    expect(body).not.toContain(SECRET);
    expect(body).not.toMatch(/root:|bases:/);
  });

  it("a whole address in the place of a path is refused", async () => {
    expect((await ask(`http://127.0.0.1:${portOf()}/job`)).status).toBe(403);
    expect((await ask("file:///etc/passwd")).status).toBe(403);
  });

  it("of what the job names: the files in its folder, by their real place, and no list of the folder", async () => {
    const names = ["rows.csv", "../secret.txt", "link.csv", "folder.csv", "nul", "//machine/share/a.csv", "/dev/zero"];
    const text = names
      .map((name, at) => `  - { mark: B${at}, basePlate: { from: ${JSON.stringify(name)} } }`)
      .join("\n");
    writeFileSync(join(folder, "job", "job.yaml"), `bases:\n${text}\nschedule: inside.csv\n`);
    writeFileSync(join(folder, "job", "rows.csv"), "mark\n");
    mkdirSync(join(folder, "job", "folder.csv"));
    symlinkSync(join(folder, "secret.txt"), join(folder, "job", "link.csv"));
    symlinkSync(join(folder, "job", "rows.csv"), join(folder, "job", "inside.csv"));
    const listed = await ask("/job/beside");
    const told = JSON.parse(listed.body) as { name: string; files: { name: string; why: string | null }[] };
    expect(told.name).toBe("job.yaml");
    expect(told.files.map(({ name }) => name)).toEqual(["inside.csv", ...names]);
    expect(told.files.filter(({ why }) => why === null).map(({ name }) => name)).toEqual([
      "inside.csv",
      "rows.csv",
      "folder.csv",
    ]);
    const answers = await Promise.all(names.map((name) => ask(`/job/beside/${encodeURIComponent(name)}`)));
    expect(answers.map(({ status }) => status)).toEqual([200, 404, 404, 403, 403, 403, 403]);
    expect(answers.map(({ body }) => body).join("")).not.toContain(SECRET);
    expect(answers[0]?.body).toBe("mark\n");
    expect(answers[1]?.body).toMatch(/outside of the job's folder/);
    expect((await ask("/job/beside/inside.csv")).body).toBe("mark\n");
    expect((await ask("/job/beside/beside.txt")).status).toBe(404);
  });
});

describe("the job is saved", () => {
  const save = (body: string, hash: string, headers: Headers = {}) =>
    ask("/job", { method: "PUT", body, headers: { "if-match": `"${hash}"`, ...headers } });

  it("whole, by the state that it was read in, with nothing left beside it", async () => {
    const read = await ask("/job");
    expect([read.status, read.body]).toEqual([200, jobText()]);
    const hash = /"(.+)"/.exec(read.headers.get("etag") ?? "")?.[1] ?? "";
    const changed = read.body.replace("Invented depot", "Invented dépôt 漢");
    const saved = await save(changed, hash);
    expect([saved.status, saved.headers.get("etag")]).toEqual([200, `"${hashOf(changed)}"`]);
    expect(jobText()).toBe(changed);
    expect(readdirSync(join(folder, "job")).sort()).toEqual(["beside.txt", "job.yaml"]);
  });

  it("never over what somebody else wrote meanwhile", async () => {
    const hash = hashOf(jobText());
    writeFileSync(join(folder, "job", "job.yaml"), "job: { number: theirs }\n");
    const refused = await save("job: { number: ours }\n", hash);
    expect(refused.status).toBe(412);
    expect(refused.body).toMatch(/job\.yaml was changed on the disk since it was opened, and was left as it is/);
    expect(jobText()).toBe("job: { number: theirs }\n");
  });

  it("of two at once, one", async () => {
    const hash = hashOf(jobText());
    const texts = Array.from({ length: 8 }, (_, at) => `job: { number: "${at}" }\n${"# \n".repeat(20_000)}`);
    const answers = await Promise.all(texts.map((text) => save(text, hash)));
    const statuses = answers.map(({ status }) => status);
    expect(statuses.filter((status) => status === 200)).toHaveLength(1);
    expect(statuses.filter((status) => status === 412)).toHaveLength(7);
    expect(jobText()).toBe(texts[statuses.indexOf(200)]);
  });

  it("not without the state it is of, not what is no text, not elsewhere", async () => {
    const before = jobText();
    expect((await ask("/job", { method: "PUT", body: "a: 1\n" })).status).toBe(428);
    expect((await ask("/job", { method: "PUT", body: "a: 1\n", headers: { "if-match": "*" } })).status).toBe(428);
    const binary = await save("PK\u0003\u0004 a workbook", hashOf(before));
    expect([binary.status, binary.body]).toEqual([422, expect.stringContaining("job.yaml")]);
    for (const target of ["/", "/index.html", "/job/beside", "/job/beside/beside.txt", "/new.yaml"]) {
      const { status } = await ask(target, {
        method: "PUT",
        body: "a: 1\n",
        headers: { "if-match": `"${hashOf(before)}"` },
      });
      expect([target, status]).toEqual([target, 405]);
    }
    expect(jobText()).toBe(before);
  });

  it("not where it is larger than is read: by what it says of itself, and by what comes", async () => {
    const before = jobText();
    const huge = await save("", hashOf(before), { "content-length": String(50 * 1024 * 1024) });
    expect([huge.status, huge.body]).toEqual([413, expect.stringContaining("A job has at most 16 MB")]);
    const chunk = `100000\r\n${"x".repeat(0x100000)}\r\n`;
    const head = `PUT /job HTTP/1.1\r\nhost: 127.0.0.1:${portOf()}\r\norigin: http://127.0.0.1:${portOf()}\r\nif-match: "${hashOf(before)}"\r\ntransfer-encoding: chunked\r\n\r\n`;
    const flood = await sendRaw(head + chunk.repeat(20)).catch(() => ({ status: 413 }));
    expect(flood.status).toBe(413);
    expect(jobText()).toBe(before);
    expect((await ask("/job")).status).toBe(200);
  });

  it("not where it is gone, nor where it is write-protected", async () => {
    const hash = hashOf(jobText());
    rmSync(join(folder, "job", "job.yaml"));
    const gone = await save("a: 1\n", hash);
    expect([gone.status, gone.body]).toEqual([410, expect.stringContaining("there is no such file")]);
    writeFileSync(join(folder, "job", "job.yaml"), "a: 0\n", { mode: 0o444 });
    const locked = await save("a: 1\n", hashOf("a: 0\n"));
    expect([locked.status, locked.body]).toEqual([507, expect.stringContaining("write-protected")]);
    expect(jobText()).toBe("a: 0\n");
  });
});

describe("the command", () => {
  it("says what is wrong with its arguments and its job", async () => {
    const port = await runProgram(folder, ["open", "--port", "70000"]);
    expect(port).toMatchObject({ status: 2, stderr: expect.stringContaining("a whole number from 0") });
    const missing = await runProgram(folder, ["open", "no.yaml"]);
    expect(missing).toMatchObject({
      status: 2,
      stdout: "",
      stderr: expect.stringContaining("no.yaml: there is no such file"),
    });
    const two = await runProgram(folder, ["open", "a.yaml", "b.yaml"]);
    expect(two).toMatchObject({ status: 2, stderr: expect.stringContaining("open takes one name") });
    const taken = runProcess(folder, ["open", "job/job.yaml", "--no-browser", "--port", String(portOf())]);
    expect(taken).toMatchObject({ status: 2, stderr: expect.stringContaining(`port ${portOf()} is in use`) });
  });

  it.each(["SIGINT", "SIGTERM"] as const)(
    "prints the address, answers, and ends with 0 on %s while a page is open",
    async (signal) => {
      const child = spawn(process.execPath, [MAIN, "open", "job/job.yaml", "--no-browser", "--port", "0"], {
        cwd: folder,
      });
      const ended = new Promise<number | null>((resolve) => child.on("exit", (code) => resolve(code)));
      const address = await new Promise<string>((resolve) =>
        child.stdout.once("data", (data) => resolve(String(data).trim())),
      );
      expect(address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/);
      const page = await fetch(address);
      expect([page.status, (await page.text()).includes("rodplate-job")]).toEqual([200, true]);
      const socket = connect(Number(new URL(address).port), "127.0.0.1");
      await new Promise((resolve) => socket.once("connect", resolve));
      socket.on("error", () => {});
      child.kill(signal);
      expect(await ended).toBe(0);
    },
  );

  it("opens the browser by what each system has, and nothing where there is no screen", () => {
    const address = "http://127.0.0.1:24118/";
    expect(openerOf(address, {}, "darwin")).toEqual({ command: "open", args: [address] });
    expect(openerOf(address, {}, "win32")).toEqual({ command: "cmd", args: ["/c", "start", "", address] });
    expect(openerOf(address, { DISPLAY: ":0" }, "linux")).toEqual({ command: "xdg-open", args: [address] });
    expect(openerOf(address, { WAYLAND_DISPLAY: "wayland-0" }, "linux")?.command).toBe("xdg-open");
    expect(openerOf(address, {}, "linux")).toBeNull();
  });
});
