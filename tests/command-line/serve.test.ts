import { spawn } from "node:child_process";
import { beforeAll, expect, test } from "vitest";
import { createMessageConnection, StreamMessageReader, StreamMessageWriter } from "vscode-jsonrpc/node";
import { buildOnce, program } from "./built.ts";
import { folderWith } from "./run.ts";

beforeAll(buildOnce, 120_000);

test("serve --stdio is a language server that ends when it is told to", async () => {
  const folder = folderWith({});
  const child = spawn(process.execPath, [program, "serve", "--stdio", "--clientProcessId=1"], {
    cwd: folder,
    env: { PATH: process.env.PATH, HOME: folder, FERRULE_CACHE: "off" },
  });
  let err = "";
  child.stderr.on("data", (data) => {
    err += data;
  });
  const ended = new Promise((resolve) => child.on("close", resolve));
  const connection = createMessageConnection(
    new StreamMessageReader(child.stdout),
    new StreamMessageWriter(child.stdin),
  );
  connection.listen();
  const answer = await connection.sendRequest<{ capabilities: object }>("initialize", {
    processId: process.pid,
    rootUri: null,
    capabilities: {},
  });
  expect(answer.capabilities).toHaveProperty("hoverProvider");
  await connection.sendRequest("shutdown");
  await connection.sendNotification("exit");
  expect(await ended).toBe(0);
  expect(err).toBe("");
});
