import {
  type Connection,
  DidChangeWatchedFilesNotification,
  type DidChangeWatchedFilesParams,
  FileChangeType,
  type FileOperationRegistrationOptions,
  WatchKind,
} from "vscode-languageserver";
import type { Addresses } from "./addresses.ts";
import { fileExtension } from "./host.ts";
import type { Sessions } from "./sessions.ts";

/** Files of the language, and folders, which may hold some. */
export const watchedOperations: FileOperationRegistrationOptions = {
  filters: [
    { pattern: { glob: `**/*${fileExtension}`, matches: "file" } },
    { pattern: { glob: "**", matches: "folder" } },
  ],
};

/** Asks the client to tell of changes on the disk. */
export async function watchFiles(connection: Connection): Promise<void> {
  await connection.client.register(DidChangeWatchedFilesNotification.type, {
    watchers: [
      { globPattern: `**/*${fileExtension}` },
      // A folder that goes takes its files along, and nobody tells of each of them.
      { globPattern: "**/*", kind: WatchKind.Delete },
    ],
  });
}

/** Takes in what changed on the disk. */
export function takeChanges(
  { changes }: DidChangeWatchedFilesParams,
  sessions: Sessions,
  addresses: Addresses,
): Promise<void> {
  const written = new Set<string>();
  const removed = new Set<string>();
  for (const { uri, type } of changes) {
    const own = addresses.own(uri);
    if (type === FileChangeType.Deleted) {
      removed.add(own);
      written.delete(own);
    } else if (own.endsWith(fileExtension)) {
      written.add(own);
      removed.delete(own);
    }
  }
  return sessions.changedOnDisk([...written], [...removed]);
}
