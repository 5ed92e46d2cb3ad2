/** Answers the server's questions about files that it cannot reach itself, with the editor's file system. */
import { type CancellationToken, FileType, Uri, workspace } from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";

const extension = ".ferrule";

/** Folders inside each other that are followed. */
const deepestFolder = 64;

/** The largest file that is read, in bytes. */
const mostBytes = 24 * 1024 * 1024;

/** How many questions are put to the editor's file system at a time; on a remote one each takes a while. */
const atOnce = 16;

/** Has a client's server answered: which folder is a workshop's root, which files it holds, and what is in them. */
export function answerFileRequests(client: BaseLanguageClient): void {
  client.onRequest("ferrule/rootOf", ({ folder }: { folder: string }) => rootOf(folder));
  client.onRequest("ferrule/list", ({ root }: { root: string }, token: CancellationToken) => list(root, token));
  client.onRequest("ferrule/read", ({ uris }: { uris: string[] }, token: CancellationToken) => read(uris, token));
}

/** The nearest folder upward with a `workshop.ferrule`, else the nearest repository, else the folder itself. */
async function rootOf(folder: string): Promise<string> {
  let repository: Uri | undefined;
  for (let current = Uri.parse(folder); ; ) {
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

function withoutSlash(uri: Uri): string {
  return uri.toString().replace(/\/$/, "");
}

/**
 * Every file of the language below a folder. Installed packages and what begins with a dot hold none of a workshop's
 * sources; what is reached through a link may lie outside the folder, so no link is followed.
 */
async function list(root: string, token: CancellationToken): Promise<string[]> {
  const found: string[] = [];
  let folders = [Uri.parse(root)];
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

/** The texts of files. One that is gone, too large or not UTF-8 is left out. */
async function read(uris: readonly string[], token: CancellationToken): Promise<{ uri: string; text: string }[]> {
  const texts: { uri: string; text: string }[] = [];
  const decoder = new TextDecoder("utf-8", { fatal: true });
  await inTurns(uris, token, async (uri) => {
    try {
      const parsed = Uri.parse(uri);
      if ((await workspace.fs.stat(parsed)).size > mostBytes) return;
      texts.push({ uri, text: decoder.decode(await workspace.fs.readFile(parsed)) });
    } catch {
      // The server reports what it asked for and did not get.
    }
  });
  return texts;
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
