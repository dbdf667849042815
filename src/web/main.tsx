import "./no-eval.ts";
import { render } from "solid-js/web";
import { App } from "./app.tsx";
import { keepPages } from "./offline/pages-kept.ts";
import { startRouter } from "./router.ts";
import { startLight } from "./shell/light.ts";
import "./look/tokens.css";
import "./look/shared.css";

startLight();
startRouter();
keepPages();
render(() => <App />, document.getElementById("lacbench") as HTMLElement);
