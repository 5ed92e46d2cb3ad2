/** Marks up text for a terminal. A report is handed one and knows nothing of escape codes. */
export interface Paint {
  error(text: string): string;
  warning(text: string): string;
  information(text: string): string;
  good(text: string): string;
  strong(text: string): string;
  quiet(text: string): string;
}

const plainly = (text: string): string => text;

/** No marks at all: for files, pipes, and whoever does not want them. */
export const plain: Paint = {
  error: plainly,
  warning: plainly,
  information: plainly,
  good: plainly,
  strong: plainly,
  quiet: plainly,
};

const sgr =
  (on: string, off: string) =>
  (text: string): string =>
    text === "" ? "" : `\u001b[${on}m${text}\u001b[${off}m`;

/** The eight colours that every terminal lets its owner choose (ECMA-48, select graphic rendition). */
export const coloured: Paint = {
  error: sgr("1;31", "22;39"),
  warning: sgr("1;33", "22;39"),
  information: sgr("1;36", "22;39"),
  good: sgr("1;32", "22;39"),
  strong: sgr("1", "22"),
  quiet: sgr("2", "22"),
};
