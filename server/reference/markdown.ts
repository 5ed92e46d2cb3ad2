/** A cell of a table: bars and line breaks would end it. */
export function cell(text: string): string {
  return text.replace(/\r?\n/g, " ").replace(/\|/g, "\\|");
}

/** A table with a head. */
export function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]): string => `| ${cells.map(cell).join(" | ")} |`;
  return [line(head), `| ${head.map(() => "---").join(" | ")} |`, ...rows.map(line)].join("\n");
}

export function code(text: string): string {
  return text.includes("`") ? `\`\` ${text} \`\`` : `\`${text}\``;
}

export function fenced(text: string, language = "ferrule"): string {
  return `\`\`\`${language}\n${text.replace(/\s+$/, "")}\n\`\`\``;
}

/** The anchor that a heading gets on the usual Markdown pages. */
export function anchor(heading: string): string {
  return heading
    .toLowerCase()
    .replace(/[^\p{L}\p{N} _-]/gu, "")
    .replace(/ /g, "-");
}

/** A page: a title, a remark that it is derived, and its parts with an empty line between. */
export function page(title: string, parts: readonly string[]): string {
  const remark = "<!-- Written by `npm run generate` from the declarations in the code; edit those instead. -->";
  return `${[`# ${title}`, remark, ...parts].join("\n\n")}\n`;
}
