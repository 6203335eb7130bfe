/** Views whose code is loaded when they are first shown, or before, while the page has nothing else to do. */
import type { ComponentType, JSX } from "preact";
import { useEffect, useState } from "preact/hooks";
import { NOT_LOADED } from "../engine/not-loaded.js";

const ahead: (() => Promise<unknown>)[] = [];

/** Code that `loadAhead` loads too, so that it is there when its server no longer is. */
export function ofPage<T>(load: () => Promise<T>): () => Promise<T> {
  ahead.push(load);
  return load;
}

/** Loads it, a part whenever the page is idle. What does not come is asked for again when it is needed. */
export async function loadAhead(): Promise<void> {
  for (const load of ahead) {
    await idle();
    await load().catch(() => {});
  }
}

/** Safari has no way to ask for it. */
function idle(): Promise<void> {
  return new Promise((resolve) => {
    if ("requestIdleCallback" in window) window.requestIdleCallback(() => resolve());
    else setTimeout(resolve, 200);
  });
}

type Loaded = { readonly kind: "view"; readonly Part: ComponentType } | { readonly kind: "refused" };

/** Shows the view once its code is there; one that was loaded before is there at once. */
export function later(load: () => Promise<ComponentType>): ComponentType {
  let known: Loaded | null = null;
  const find = ofPage(async () => {
    known = await load().then(
      (Part): Loaded => ({ kind: "view", Part }),
      (): Loaded => ({ kind: "refused" }),
    );
    return known;
  });
  return function Later(): JSX.Element {
    const [loaded, setLoaded] = useState<Loaded | null>(known);
    const show = (): void => void find().then(setLoaded);
    useEffect(() => {
      if (known?.kind !== "view") show();
    }, []);
    if (loaded?.kind === "view") return <loaded.Part />;
    return loaded === null ? <p class="reading soft" aria-busy="true" /> : <NotLoaded again={show} />;
  };
}

/** Why there is nothing here, and a way to ask once more. */
export function NotLoaded({ again }: { again(): void }): JSX.Element {
  return (
    <div class="reading">
      <p class="fault" role="alert">
        {NOT_LOADED}
      </p>
      <button type="button" onClick={again}>
        Try again
      </button>
    </div>
  );
}
