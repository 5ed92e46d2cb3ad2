// Puts the program behind its entry point in one file: deflated, as a comment, which costs little until
// server/command-line/load-program.ts wants it. V8 would otherwise look through all of it at every start (2 MB take
// some 10 ms even as comments), and keeps compiled code of everything but the file that node was started with.
import { createHash } from "node:crypto";
import { readFileSync, writeFileSync } from "node:fs";
import { resolve } from "node:path";
import { deflateRawSync } from "node:zlib";

/** Begins the line above the packed program. */
export const mark = "\n//! program\n";

/**
 * Code with every character outside ASCII as an escape: some of them would end a comment, and a file without any is
 * read and looked through in half the time. The bundler leaves them alone in regular expressions, where an escape
 * means the same.
 */
function inAscii(code) {
  return code.replace(/[^\n\t -~]/g, (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, "0")}`);
}

/**
 * What stands behind the entry point for a program.
 * @param {string} program in ASCII.
 */
export function packed(program) {
  return `${mark}//${deflateRawSync(program, { level: 9 }).toString("base64")}`;
}

/**
 * An esbuild plugin.
 * @param {string} entry the program's own entry point.
 */
export function packProgram(entry) {
  return {
    name: "pack-program",
    async setup(build) {
      const options = build.initialOptions;
      const { outfile, banner, define, plugins, ...shared } = options;
      const { outputFiles } = await build.esbuild.build({
        ...shared,
        entryPoints: [entry],
        charset: "ascii",
        define: { ...define, ferruleDigest: '"packed"', ferruleIsPacked: "false" },
        write: false,
      });
      const program = inAscii(outputFiles[0].text);
      const digest = createHash("sha256").update(program).digest("hex").slice(0, 16);
      options.charset = "ascii";
      options.define = { ...define, ferruleDigest: JSON.stringify(digest), ferruleIsPacked: "true" };
      build.onEnd((result) => {
        if (result.errors.length > 0) return;
        const file = resolve(options.absWorkingDir, outfile);
        writeFileSync(file, `${inAscii(readFileSync(file, "utf8"))}${packed(program)}`);
      });
    },
  };
}
