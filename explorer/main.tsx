import { render } from "solid-js/web";

render(() => <h1>duskline</h1>, document.querySelector("#root")!);
