/** The page begins here: state, engine, and the frame that shows them. */
import { render } from "preact";
import { Frame } from "./app/frame.js";
import { loadAhead } from "./app/later.js";
import { PageContext } from "./app/page.js";
import { startEngine } from "./engine/engine.js";
import { startActions } from "./state/actions.js";
import { today } from "./state/clock.js";
import { startKeeper } from "./state/keeper.js";
import { listenToPage } from "./state/page-events.js";
import { startStore } from "./state/store.js";

const root = document.getElementById("page");
if (root === null) throw new Error("the page has no place to stand");
root.replaceChildren();
const store = startStore();
const actions = startActions(store, startEngine(), startKeeper(Date.now), today);
render(
  <PageContext.Provider value={{ store, actions }}>
    <Frame />
  </PageContext.Provider>,
  root,
);

void actions.restore().then(actions.findBegun);
listenToPage(store, actions);
void loadAhead();
