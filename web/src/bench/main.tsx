import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { Bench } from "../state/bench";
import { BrowserKeep } from "../state/keep";
import { Api } from "../wire/api";
import { BenchPage } from "./BenchPage";
import "./look.css";
import "./layout.css";
import "./panels.css";
import "./arch.css";
import "./path.css";
import "./strip.css";
import "./pins.css";
import "./chart.css";
import "./ledger.css";
import "./plan.css";

// The key to the server comes in the address after #, which a browser never sends anywhere.
const token = new URLSearchParams(location.hash.slice(1)).get("token") ?? location.hash.slice(1);
const bench = new Bench(new Api(new URL(".", location.href).href, token), BrowserKeep.ofWindow());

const dress = (): void => {
  document.documentElement.dataset["look"] = bench.store.get().look;
};
bench.store.subscribe(dress);
dress();

createRoot(document.getElementById("bench")!).render(
  <StrictMode>
    <BenchPage bench={bench} />
  </StrictMode>,
);
void bench.opening.start();
