/** Answers the server's questions about files that it cannot reach itself, with the editor's file system. */
import { type CancellationToken, FileSystemError, FileType, Uri, workspace } from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import type { FileContent } from "../server/language-server/host.ts";
import {
  type ListParameters,
  listRequest,
  type ReadParameters,
  type RootOfParameters,
  readRequest,
  rootOfRequest,
} from "../server/language-server/protocol.ts";

const extension = ".ferrule";

/** Folders inside each other that are followed. */
const deepestFolder = 64;

/** The largest file that is read, in bytes. */
const mostBytes = 24 * 1024 * 1024;

/** How many questions are put to the editor's file system at a time; on a remote one each takes a while. */
const atOnce = 16;

/** Has a client's server answered: which folder is a workshop's root, which files it holds, and what is in them. */
export function answerFileRequests(client: BaseLanguageClient): void {
  client.onRequest(rootOfRequest, ({ folder }: RootOfParameters) => rootOf(folder));
  client.onRequest(listRequest, ({ root }: ListParameters, token: CancellationToken) => list(root, token));
  client.onRequest(readRequest, ({ uris }: ReadParameters, token: CancellationToken) => read(uris, token));
}

/** The nearest folder upward with a `workshop.ferrule`, else the nearest repository, else the folder itself. */
async function rootOf(folder: string): Promise<string> {
  let repository: Uri | undefined;
  for (let current = folderUri(folder); ; ) {
    if (await exists(Uri.joinPath(current, `workshop${extension}`))) return withoutSlash(current);
    if (repository === undefined && (await exists(Uri.joinPath(current, ".git")))) repository = current;
    const above = Uri.joinPath(current, "..");
    if (above.path === current.path) break;
    current = above;
  }
  return repository === undefined ? folder : withoutSlash(repository);
}

async function exists(uri: Uri): Promise<boolean> {
  try {
    await workspace.fs.stat(uri);
    return true;
  } catch {
    return false;
  }
}

/** A folder by its address without a slash at the end, which for the topmost one leaves no path at all. */
function folderUri(address: string): Uri {
  const uri = Uri.parse(address);
  return uri.path === "" ? uri.with({ path: "/" }) : uri;
}

function withoutSlash(uri: Uri): string {
  return uri.toString().replace(/\/$/, "");
}

/**
 * Every file of the language below a folder. Installed packages and what begins with a dot hold none of a workshop's
 * sources; what is reached through a link may lie outside the folder, so no link is followed.
 */
async function list(root: string, token: CancellationToken): Promise<string[]> {
  const found: string[] = [];
  let folders = [folderUri(root)];
  for (let depth = 0; depth <= deepestFolder && folders.length > 0; depth += 1) {
    const below: Uri[] = [];
    await inTurns(folders, token, async (folder) => {
      for (const [name, type] of await entriesOf(folder)) {
        const uri = Uri.joinPath(folder, name);
        if (type === FileType.Directory) {
          if (name !== "node_modules" && !name.startsWith(".")) below.push(uri);
        } else if (type === FileType.File && name.endsWith(extension) && name !== extension) found.push(uri.toString());
      }
    });
    folders = below;
  }
  return found.sort();
}

async function entriesOf(folder: Uri): Promise<[string, FileType][]> {
  try {
    return await workspace.fs.readDirectory(folder);
  } catch {
    // Gone since it was listed, or not for us to read.
    return [];
  }
}

/** What files hold, or why it was not taken in. One that does not exist is left out. */
async function read(uris: readonly string[], token: CancellationToken): Promise<FileContent[]> {
  const contents: FileContent[] = [];
  await inTurns(uris, token, async (uri) => {
    const content = await contentOf(uri);
    if (content !== undefined) contents.push(content);
  });
  return contents;
}

async function contentOf(uri: string): Promise<FileContent | undefined> {
  let bytes: Uint8Array;
  try {
    const parsed = Uri.parse(uri);
    const { size } = await workspace.fs.stat(parsed);
    if (size > mostBytes) return { uri, refused: `it is larger than ${mostBytes / 1024 / 1024} MB` };
    bytes = await workspace.fs.readFile(parsed);
  } catch (error) {
    const isGone = error instanceof FileSystemError && error.code === "FileNotFound";
    return isGone ? undefined : { uri, refused: error instanceof Error ? error.message : String(error) };
  }
  try {
    return { uri, text: new TextDecoder("utf-8", { fatal: true }).decode(bytes) };
  } catch {
    return { uri, refused: "it is not UTF-8 text; save it as UTF-8" };
  }
}

/** Does the same with each of many things, a few at a time, until cancelled. */
async function inTurns<Thing>(
  things: readonly Thing[],
  token: CancellationToken,
  work: (thing: Thing) => Promise<void>,
): Promise<void> {
  let next = 0;
  const worker = async (): Promise<void> => {
    while (next < things.length && !token.isCancellationRequested) {
      const thing = things[next++] as Thing;
      await work(thing);
    }
  };
  await Promise.all(Array.from({ length: Math.min(atOnce, things.length) }, worker));
}
