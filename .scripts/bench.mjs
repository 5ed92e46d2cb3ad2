// `npm run bench`: builds, then runs the benchmark of tests/bench and prints its figures.
import { prepare } from "./toolchain.mjs";

prepare();
const { build } = await import("./build.mjs");
await build();
const { importTypeScript } = await import("./typescript.mjs");
const { main } = await importTypeScript("tests/bench/main.ts");
await main(process.argv.slice(2));
