import { createServer, type Server, type Socket } from "node:net";
import { forget } from "../cache-folder.ts";
import { answerCheck, type CheckAnswer } from "../check-answer.ts";
import { CheckMemory } from "../check-memory.ts";
import type { KeptEngines } from "../load.ts";
import { isUsageProblem } from "../problem.ts";
import { type ReadWorkshop, readWorkshops } from "../read-workshops.ts";
import { findTargets, Roots } from "../targets.ts";
import { version } from "../version.ts";
import { Watches } from "../watches.ts";
import { askForState } from "./ask.ts";
import {
  heard,
  mostBytes,
  packAnswer,
  packState,
  type Question,
  type StandbyState,
  unpackQuestion,
} from "./message.ts";
import { socketAt } from "./place.ts";
import { watchedFolders } from "./watched-folders.ts";

/** Workshops that are held; the one asked for longest ago goes first. */
const mostWorkshops = 4;
/** Bytes of memory beyond which a standby ends once it has answered; the next one begins anew. */
const mostMemory = 1.5 * 1024 ** 3;
/** Milliseconds: how long an asker may take over its question, and how often is looked whether the place is still ours. */
const pauses = { toAsk: 10_000, toLook: 30_000 } as const;
/** Milliseconds: what took longer is not worked out before it is asked for, so that a question never waits long. */
const quick = 500;
/** Milliseconds for which a new standby practises. */
const practice = 500;

type CheckQuestion = Extract<Question, { wanted: "check" }>;

interface Worked {
  readonly answer: CheckAnswer;
  /** Milliseconds. */
  readonly took: number;
}

/** Answers checks with engines that it keeps, until nobody has asked for a while. */
export class Standby {
  readonly #path: string;
  readonly #patience: number;
  readonly #server: Server;
  readonly #watches = new Watches(
    () => this.#prepare(),
    // What is not watched is worked out when it is asked for.
    () => undefined,
    false,
  );
  #own: string | undefined;
  #engines: KeptEngines = new Map();
  #units: string | undefined;
  #answered = 0;
  /** The last question, when its answer was quickly found: it is likely to be asked again. */
  #likely: CheckQuestion | undefined;
  /** Whether it is about to be worked out anew. */
  #isToPrepare = false;
  /** Settles when what was last begun is done. */
  #turn: Promise<unknown> = Promise.resolve();
  #idle: NodeJS.Timeout | undefined;
  #look: NodeJS.Timeout | undefined;
  #isEnding = false;
  #ended: () => void = () => undefined;

  /** Settles when it has ended. */
  readonly ended: Promise<void> = new Promise((resolve) => {
    this.#ended = resolve;
  });

  /**
   * @param path where it listens.
   * @param patience seconds without a question after which it ends.
   */
  constructor(path: string, patience: number) {
    this.#path = path;
    this.#patience = patience;
    this.#server = createServer({ allowHalfOpen: true }, (socket) => this.#hear(socket));
  }

  /**
   * Begins to listen. A socket that somebody left behind is cleared away.
   * @returns false when another one listens there, or nobody can.
   */
  async listen(): Promise<boolean> {
    if (!(await this.#listenOnce())) {
      const left = socketAt(this.#path);
      if ((await askForState(this.#path, "state")) !== "nobody") return false;
      // Another one that begins too may have put its own there meanwhile.
      if (socketAt(this.#path) === left) forget(this.#path);
      if (!(await this.#listenOnce())) return false;
    }
    this.#own = socketAt(this.#path);
    this.#look = setInterval(() => {
      // Nobody finds us any more.
      if (this.#own === undefined || socketAt(this.#path) !== this.#own) this.end();
    }, pauses.toLook);
    this.#wait();
    return true;
  }

  #listenOnce(): Promise<boolean> {
    // Only this user may ask.
    const before = process.umask(0o077);
    return new Promise<boolean>((resolve) => {
      const failed = (): void => resolve(false);
      this.#server.removeAllListeners("error").once("error", failed);
      this.#server.listen(this.#path, () => {
        this.#server.removeListener("error", failed).on("error", () => this.end());
        resolve(true);
      });
    }).finally(() => process.umask(before));
  }

  /**
   * Takes workshops in, so that the first question about them is answered quickly, and practises on them for a moment:
   * V8 makes quick what it has seen often. Questions are heard in between.
   */
  async takeIn(workshops: readonly ReadWorkshop[], folder: string, today: string): Promise<void> {
    const settings = { format: "text", failOn: "never", list: [], today, width: 100, colour: false, folder };
    const took = await this.#check({ wanted: "check", settings, workshops }).then(({ took }) => took);
    if (took > quick) return;
    const engines: KeptEngines = new Map();
    const edited = workshops.map(withSpaces);
    const end = performance.now() + practice;
    for (let round = 0; performance.now() < end && this.#answered === 0; round++) {
      await this.#inTurn(() => answerCheck(round % 2 === 0 ? workshops : edited, settings, engines));
      await new Promise((resolve) => setImmediate(resolve));
    }
  }

  end(): void {
    clearTimeout(this.#idle);
    clearInterval(this.#look);
    if (this.#isEnding) return;
    this.#isEnding = true;
    this.#likely = undefined;
    void this.#watches.stop();
    // To close the server removes what lies at its path, even when another standby has put its own there.
    if (this.#own === undefined || socketAt(this.#path) !== this.#own) this.#ended();
    else this.#server.close(() => this.#ended());
  }

  #wait(): void {
    clearTimeout(this.#idle);
    this.#idle = setTimeout(() => this.end(), this.#patience * 1000);
  }

  #hear(socket: Socket): void {
    const chunks: Buffer[] = [];
    let length = 0;
    socket.setTimeout(pauses.toAsk, () => socket.destroy());
    // Who asked has gone away.
    socket.on("error", () => socket.destroy());
    socket.on("data", (chunk: Buffer) => {
      length += chunk.length;
      if (length > 2 * mostBytes) socket.destroy();
      else chunks.push(chunk);
    });
    socket.on("end", () => {
      this.#reply(socket, Buffer.concat(chunks)).catch(() => {
        // A fault of the program: the asker meets it itself and says so; what we hold is not to be trusted.
        socket.destroy();
        this.end();
      });
    });
    socket.write(Uint8Array.of(heard));
  }

  async #reply(socket: Socket, message: Buffer): Promise<void> {
    const question = unpackQuestion(message);
    switch (question?.wanted) {
      case "check":
        this.#wait();
        await this.#answer(socket, question);
        break;
      case "state":
        socket.end(packState(this.#state()));
        break;
      case "end":
        socket.end(packState(this.#state()));
        this.end();
        break;
      default:
        socket.destroy();
    }
  }

  async #answer(socket: Socket, question: CheckQuestion): Promise<void> {
    const { answer, took } = await this.#check(question);
    this.#answered += 1;
    socket.end(packAnswer(answer));
    const { keptFor, settings, workshops } = question;
    if (keptFor !== undefined) {
      socket.once("close", () => CheckMemory.open(settings, workshops, keptFor)?.remember(answer));
    }
    if (process.memoryUsage.rss() > mostMemory) return this.end();
    this.#likely = took > quick ? undefined : question;
    await this.#watches.follow(watchedFolders(this.#likely?.workshops ?? []));
  }

  /** Works the likely question out anew, since something changed: whoever asks it finds it done. */
  #prepare(): void {
    if (!this.#likely || this.#isToPrepare) return;
    this.#isToPrepare = true;
    this.#inTurn(async () => {
      this.#isToPrepare = false;
      const question = this.#likely;
      const workshops = question && readAgain(question);
      if (!workshops) return;
      const { took } = await this.#work({ ...question, workshops });
      if (took > quick) this.#likely = undefined;
    }).catch(() => this.end());
  }

  /** One thing after another: an engine that is asked must not be changed meanwhile. */
  #inTurn<T>(work: () => Promise<T>): Promise<T> {
    const done = this.#turn.then(work);
    this.#turn = done.catch(() => undefined);
    return done;
  }

  /** @returns the answer, and the milliseconds that it took. */
  #check(question: CheckQuestion): Promise<Worked> {
    return this.#inTurn(() => this.#work(question));
  }

  async #work({ settings, workshops }: CheckQuestion): Promise<Worked> {
    const begun = performance.now();
    // An engine shows numbers in the units that it was made with.
    if (settings.units !== this.#units) this.#engines = new Map();
    this.#units = settings.units;
    const answer = await answerCheck(workshops, settings, this.#engines);
    for (const { folder } of workshops) {
      const kept = this.#engines.get(folder);
      this.#engines.delete(folder);
      if (kept) this.#engines.set(folder, kept);
    }
    for (const folder of [...this.#engines.keys()].slice(0, -mostWorkshops)) this.#engines.delete(folder);
    return { answer, took: performance.now() - begun };
  }

  #state(): StandbyState {
    return {
      process: process.pid,
      version,
      answered: this.#answered,
      workshops: this.#engines.size,
      memory: process.memoryUsage.rss(),
      patience: this.#patience,
    };
  }
}

/** A workshop of which every declaration that was asked for is written a little differently. */
function withSpaces(workshop: ReadWorkshop): ReadWorkshop {
  const files = workshop.files.map(({ path, bytes }) => {
    if (typeof bytes === "number" || !workshop.asked.has(path)) return { path, bytes };
    return { path, bytes: Buffer.from(bytes.toString("latin1").replaceAll("{\n", "{ \n"), "latin1") };
  });
  return { ...workshop, files };
}

/** What a question is about, as it is on the disk now; nothing when something of it is gone, which its asker is told. */
function readAgain({ settings: { folder }, workshops }: CheckQuestion): readonly ReadWorkshop[] | undefined {
  const asked = workshops.flatMap((workshop) => [...workshop.asked]);
  try {
    return readWorkshops(findTargets(asked, folder, new Roots()), undefined, folder);
  } catch (error) {
    if (isUsageProblem(error)) return undefined;
    throw error;
  }
}
