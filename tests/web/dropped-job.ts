/** A job file that is dropped on the empty page, as a person would. */
import type { Page } from "playwright-core";

/** Drops the text and waits for the first template; of a job at fault for what is said of it. */
export async function dropJob(page: Page, text: string, isRight = true): Promise<void> {
  await page.getByRole("button", { name: "Open a job file" }).waitFor();
  await page.evaluate(`{
    const files = new DataTransfer();
    files.items.add(new File([${JSON.stringify(text).replaceAll("<", "\\u003c")}], "job.yaml", { type: "text/yaml" }));
    document.dispatchEvent(new DragEvent("drop", { dataTransfer: files, bubbles: true, cancelable: true }));
  }`);
  if (isRight) await page.getByRole("img", { name: /^Template / }).waitFor();
  else await page.getByRole("status").filter({ hasText: "At fault" }).waitFor();
}

/** A job of one base in inches, with what is written of it. */
export function jobInInches(base: string, title = "Store"): string {
  return `job: { number: "7", title: ${JSON.stringify(title)}, revision: A, status: preliminary }
units: in
bases:
  - mark: B1
${base}
`;
}
