/** The user's browser, opened by what each system has for it. */
import { spawn } from "node:child_process";
import type { Shell } from "./shell.js";

/** Opens an address of our own. Where nothing can open it nothing happens: the address was printed. */
export function openBrowser(address: string, { environment }: Shell, platform: NodeJS.Platform): void {
  const opener = openerOf(address, environment, platform);
  if (opener === null) return;
  const child = spawn(opener.command, [...opener.args], { stdio: "ignore", detached: true });
  child.on("error", () => {});
  child.unref();
}

/** The command that opens an address; null where there is no screen to show it on. */
export function openerOf(
  address: string,
  environment: Shell["environment"],
  platform: NodeJS.Platform,
): { readonly command: string; readonly args: readonly string[] } | null {
  if (platform === "darwin") return { command: "open", args: [address] };
  if (platform === "win32") return { command: "cmd", args: ["/c", "start", "", address] };
  const hasScreen = [environment.DISPLAY, environment.WAYLAND_DISPLAY].some(
    (name) => name !== undefined && name !== "",
  );
  return hasScreen ? { command: "xdg-open", args: [address] } : null;
}
