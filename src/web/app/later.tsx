/** Views whose code is loaded when they are first shown. */
import type { ComponentType, JSX } from "preact";
import { useEffect, useState } from "preact/hooks";

type Loaded = { readonly kind: "view"; readonly Part: ComponentType } | { readonly kind: "refused" };

/** Shows the view once its code is there; one that was shown before is there at once. */
export function later(load: () => Promise<ComponentType>): ComponentType {
  let known: Loaded | null = null;
  return function Later(): JSX.Element {
    const [loaded, setLoaded] = useState<Loaded | null>(known);
    useEffect(() => {
      if (known?.kind === "view") return;
      void load()
        .then((Part): Loaded => ({ kind: "view", Part }))
        .catch((): Loaded => ({ kind: "refused" }))
        .then((found) => {
          known = found;
          setLoaded(found);
        });
    }, []);
    if (loaded?.kind === "view") return <loaded.Part />;
    return loaded === null ? <p class="reading soft" aria-busy="true" /> : <NotLoaded />;
  };
}

function NotLoaded(): JSX.Element {
  return (
    <p class="reading fault" role="alert">
      This part of the page could not be loaded from where the page came from: start rodplate open again, or put its
      files back. The job is kept in this browser.
    </p>
  );
}
