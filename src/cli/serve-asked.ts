/**
 * What is asked of the page's server, and whether it is answered at all. It listens on loopback, but pages of other places run
 * in the same browser: a name of theirs may lead here (DNS rebinding), so `Host` must be ours; and they may send requests
 * here, so that whatever is no plain load of the page must come from the page itself, by `Origin` or `Sec-Fetch-Site`
 * (W3C, "Fetch Metadata Request Headers"), which no script can set.
 */
import type { IncomingHttpHeaders } from "node:http";

/** A request by its line and headers. */
export interface Asked {
  readonly method: string;
  /** As sent: path and query, nothing decoded. */
  readonly target: string;
  readonly headers: IncomingHttpHeaders;
}

/** An answer without a file: a status of HTTP, and a sentence. */
export interface Refusal {
  readonly status: number;
  readonly message: string;
}

/** Where the job is served; everything below it is for the page alone. */
export const JOB_PATH = "/job";

/** Methods that are answered. */
export const METHODS: readonly string[] = ["GET", "HEAD", "PUT"];

/** Path of a request, without its query. */
export function pathOf({ target }: Asked): string {
  return target.split("?")[0] ?? target;
}

/** Why a request is not answered; null where it is. */
export function refuseAsked(asked: Asked, port: number): Refusal | null {
  const { method, target, headers } = asked;
  if (!METHODS.includes(method)) return { status: 405, message: "Only GET, HEAD and PUT are answered here." };
  const host = headers.host ?? "";
  const hosts = ["127.0.0.1", "localhost", "[::1]"].map((name) => `${name}:${port}`);
  if (!hosts.includes(host.toLowerCase()) || !target.startsWith("/")) {
    return { status: 403, message: `This page is for this machine alone: ask for it as http://127.0.0.1:${port}/.` };
  }
  const isOwn = comesFromPage(headers, host);
  const isForPage = method === "PUT" || isOfJob(pathOf(asked));
  if (isOwn === false || (isForPage && isOwn === null)) {
    return { status: 403, message: "This was not asked by the page itself, and is not answered." };
  }
  return null;
}

/** True for the job and what is beside it. */
export function isOfJob(path: string): boolean {
  return path === JOB_PATH || path.startsWith(`${JOB_PATH}/`);
}

/** null: the request does not say, or a person asked for it by its address. A plain load of the page may come from anywhere. */
function comesFromPage(headers: IncomingHttpHeaders, host: string): boolean | null {
  const site = headers["sec-fetch-site"];
  const isLoad = headers["sec-fetch-mode"] === "navigate" && headers["sec-fetch-dest"] === "document";
  if (headers.origin !== undefined && headers.origin.toLowerCase() !== `http://${host.toLowerCase()}`) return false;
  if (site === "same-origin") return isLoad ? null : true;
  if (site === undefined) return headers.origin === undefined ? null : true;
  return site === "none" || isLoad ? null : false;
}
