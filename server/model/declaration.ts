import { parseDeclaration } from "../../grammar/parse.ts";
import type { Chunk, DeclarationKeyword, DeclarationTree, Span } from "../../grammar/tree.ts";

/**
 * One declaration of a workshop, known by its text.
 *
 * Where it stands (file and offset) may change without the declaration becoming another one: results are kept per
 * declaration and offsets inside results count from its start, so a line inserted above it changes nothing.
 */
export class Declaration {
  readonly keyword: DeclarationKeyword;
  /** The kind of a part, or the family of a standard. */
  readonly kind: string | undefined;
  readonly name: string;
  readonly title: string | undefined;
  /** The base after `from`. */
  readonly from: string | undefined;
  /** The build after `of`, for a record. */
  readonly of: string | undefined;
  readonly text: string;
  /** The file it stands in now. */
  uri: string;
  /** Where its text starts in that file now, in UTF-16 units. */
  start: number;
  /** True for the standards that come with the program. */
  readonly builtIn: boolean;
  #tree: DeclarationTree | undefined;
  #headerSpan: Span | undefined;

  constructor(chunk: Chunk & { readonly keyword: DeclarationKeyword }, text: string, uri: string, builtIn: boolean) {
    this.keyword = chunk.keyword;
    this.kind = chunk.kind;
    this.name = chunk.name ?? "";
    this.title = chunk.title;
    this.from = chunk.from;
    this.of = chunk.of;
    this.text = text;
    this.uri = uri;
    this.start = chunk.start;
    this.builtIn = builtIn;
  }

  /** The syntax tree, parsed when first asked for. */
  get tree(): DeclarationTree {
    if (!this.#tree) {
      this.#tree = parseDeclaration(this.text);
      this.#headerSpan = spanOfHeader(this.#tree);
    }
    return this.#tree;
  }

  /** The syntax tree for one reading of it: kept only if it is kept already. */
  readTree(): DeclarationTree {
    if (this.#tree) return this.#tree;
    const tree = this.tree;
    this.#tree = undefined;
    return tree;
  }

  /** The name in the header; kept when the tree is let go, since messages point to it all the time. */
  get headerSpan(): Span {
    return this.#headerSpan ?? spanOfHeader(this.readTree());
  }

  /** Lets go of the tree; it is parsed again when asked for. Closed files do this, so that memory stays bounded. */
  forgetTree(): void {
    this.#tree = undefined;
  }

  /** The name under which others look it up, such as `part corrie.wide-10-52` or `standard axle 12x148`. */
  get key(): string {
    return declarationKey(this.keyword, this.name, this.kind);
  }

  /** What to call it in a sentence: its title, or its name. */
  get label(): string {
    return this.title ?? this.name;
  }
}

/** Where the name stands, else what stands for it. */
function spanOfHeader({ header }: DeclarationTree): Span {
  return (header.name ?? header.kind)?.span ?? header.keywordSpan;
}

/**
 * The key of a name. Parts share one set of names whatever their kind; a standard's name counts within its family;
 * a workshop has no name of its own, since there is one in a root.
 */
export function declarationKey(keyword: DeclarationKeyword, name: string, kind?: string): string {
  if (keyword === "standard") return `standard ${kind ?? ""} ${name}`;
  if (keyword === "workshop") return "workshop";
  return `${keyword} ${name}`;
}

/** A stretch of a declaration's text: where something was stated. Becomes a line and a column only when asked. */
export interface Place {
  readonly declaration: Declaration;
  readonly span: Span;
}

/** The place of a declaration's name in its header. */
export function headerPlace(declaration: Declaration): Place {
  return { declaration, span: declaration.headerSpan };
}
