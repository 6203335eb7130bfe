/** Files given to the page: dropped as from a folder of the machine, or chosen by the button of a drop zone. */
import { readFileSync } from "node:fs";
import { basename } from "node:path";
import type { Page } from "playwright-core";

/** Of the browser: what is dropped. */
declare const DataTransfer: new () => { readonly items: { add(file: File): void } };

/** A file with its name. */
export interface GivenFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** Files of this machine, by their paths. */
export function filesAt(...paths: readonly string[]): readonly GivenFile[] {
  return paths.map((path) => ({ name: basename(path), bytes: readFileSync(path) }));
}

/** Drops files on what a selector finds. */
export async function dropOn(page: Page, selector: string, files: readonly GivenFile[]): Promise<void> {
  const given = files.map(({ name, bytes }) => ({ name, base64: Buffer.from(bytes).toString("base64") }));
  const dataTransfer = await page.evaluateHandle((all) => {
    const transfer = new DataTransfer();
    for (const { name, base64 } of all) {
      const text = atob(base64);
      transfer.items.add(new File([Uint8Array.from(text, (sign) => sign.charCodeAt(0))], name));
    }
    return transfer;
  }, given);
  await page.dispatchEvent(selector, "drop", { dataTransfer });
}

/** Opens a job by dropping its file, and those that it names, on the page. */
export async function openJobFile(page: Page, ...paths: readonly string[]): Promise<void> {
  await dropOn(page, "body", filesAt(...paths));
  const views = page.getByRole("navigation", { name: "Views" });
  await views.locator('button[aria-current="page"]', { hasText: "Template" }).waitFor();
  await page.locator("#view .drawing svg").first().waitFor();
}

/** Chooses files by the button of the drop zone of this name. */
export async function choose(page: Page, zone: string, ...files: readonly GivenFile[]): Promise<void> {
  const input = page.getByRole("group", { name: zone, exact: true }).locator('input[type="file"]').first();
  await input.setInputFiles(
    files.map(({ name, bytes }) => ({ name, mimeType: "application/octet-stream", buffer: Buffer.from(bytes) })),
  );
}
