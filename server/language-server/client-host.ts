import { type Connection, ErrorCodes, ResponseError } from "vscode-languageserver";
import {
  type FileContent,
  folderOf,
  type Host,
  type HostWatch,
  type WatchListener,
  type WorkshopRoot,
  workshopFileName,
} from "./host.ts";
import {
  type ListParameters,
  listRequest,
  type ReadParameters,
  type ReadText,
  type RootOfParameters,
  readRequest,
  rootOfRequest,
} from "./protocol.ts";

/**
 * Asks the client for its files: in a browser, and for file systems that only the client can reach. To a client that
 * cannot be asked only what is open exists.
 */
export class ClientHost implements Host {
  readonly #connection: Connection;

  constructor(connection: Connection) {
    this.#connection = connection;
  }

  async #ask<Answer>(method: string, parameters: unknown, otherwise: Answer): Promise<Answer> {
    try {
      return await this.#connection.sendRequest<Answer>(method, parameters);
    } catch (error) {
      if (error instanceof ResponseError && error.code === ErrorCodes.MethodNotFound) return otherwise;
      throw error;
    }
  }

  async rootOf(folder: string): Promise<WorkshopRoot> {
    const parameters: RootOfParameters = { folder };
    const uri = await this.#ask<string>(rootOfRequest, parameters, folder);
    const isMarked = uri !== folder || (await this.read([`${folder}/${workshopFileName}`])).length > 0;
    return { uri, isMarked };
  }

  list(root: string): Promise<readonly string[]> {
    const parameters: ListParameters = { root };
    return this.#ask<readonly string[]>(listRequest, parameters, []);
  }

  async listFolder(folder: string): Promise<readonly string[]> {
    return (await this.list(folder)).filter((uri) => folderOf(uri) === folder);
  }

  read(uris: readonly string[]): Promise<readonly FileContent[]> {
    const parameters: ReadParameters = { uris };
    return this.#ask<readonly ReadText[]>(readRequest, parameters, []);
  }
}

/** Files of the disk from one host, those of every other scheme from another. */
export class MixedHost implements Host {
  readonly #disk: Host;
  readonly #others: Host;

  constructor(disk: Host, others: Host) {
    this.#disk = disk;
    this.#others = others;
  }

  rootOf(folder: string): Promise<WorkshopRoot> {
    return this.#for(folder).rootOf(folder);
  }

  list(root: string): Promise<readonly string[]> {
    return this.#for(root).list(root);
  }

  listFolder(folder: string): Promise<readonly string[]> {
    return this.#for(folder).listFolder(folder);
  }

  async read(uris: readonly string[]): Promise<readonly FileContent[]> {
    const onDisk = uris.filter((uri) => this.#for(uri) === this.#disk);
    const elsewhere = uris.filter((uri) => this.#for(uri) !== this.#disk);
    const answers = await Promise.all([
      onDisk.length > 0 ? this.#disk.read(onDisk) : [],
      elsewhere.length > 0 ? this.#others.read(elsewhere) : [],
    ]);
    return answers.flat();
  }

  async watch(folder: string, isDeep: boolean, listener: WatchListener): Promise<HostWatch> {
    return (await this.#for(folder).watch?.(folder, isDeep, listener)) ?? { stop: () => undefined };
  }

  #for(uri: string): Host {
    return uri.startsWith("file:") ? this.#disk : this.#others;
  }
}
