import "./no-eval.ts";
import { render } from "solid-js/web";
import { App } from "./app.tsx";
import { startRouter } from "./router.ts";
import { startLight } from "./shell/light.ts";
import "./look/tokens.css";
import "./look/shared.css";

startLight();
startRouter();
render(() => <App />, document.getElementById("lacbench") as HTMLElement);
