/** Long work of the page itself in pieces, so that it never freezes. */

/** Milliseconds of work between two rests: less than a frame. */
const PIECE = 12;

/** Waited for after each small part: lets the browser draw and listen as soon as a piece of work is over. */
export function startRests(): () => Promise<void> {
  let since = performance.now();
  return async () => {
    if (performance.now() - since < PIECE) return;
    await new Promise((done) => setTimeout(done));
    since = performance.now();
  };
}
