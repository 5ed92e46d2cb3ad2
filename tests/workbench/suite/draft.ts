/** A small build with one fault, in two files of its own, for tests of what the extension answers. */
import * as vscode from "vscode";
import { openText, removeFile, writeFile } from "./workspace.ts";

const libraryText = `/// Takes up the slack of a close-ratio double.
part rear-derailleur draft.medium "Draft medium cage" {
  total-capacity: 35 t
}

part rear-derailleur draft.long "Draft long cage" {
  total-capacity: 41 t
}

part cassette draft.spread "Draft spread 11-34" {
  cogs: 11-13-15-17-19-21-23-25-27-30-34 t
}

part crankset draft.double "Draft double 50-34" {
  rings: 50-34 t
}

part frame draft.trail "Draft trail frame" {
  rear-axle: 12x148
}
`;

/** The capacity needed is (50 − 34) + (34 − 11) = 39 t by the common formula; the cage has 35 t. */
const buildText = `build draft "Draft double" {
  frame: draft.trail

  drivetrain {
    rear-derailleur: draft.medium
    cassette: draft.spread
    crankset: draft.double
  }
}
`;

/** The finding that the draft is about. */
export const faultCode = "drivetrain/cage-capacity";

/** Where the two files are. */
export const libraryPath = "draft-library.ferrule";
export const buildPath = "draft-build.ferrule";

/** Writes the draft into the open folder, its build shown in an editor, for as long as `use` takes. */
export async function withDraft(use: (editor: vscode.TextEditor) => Promise<void>, text = buildText): Promise<void> {
  await writeFile(libraryPath, libraryText);
  const editor = await openText(buildPath, text);
  try {
    await use(editor);
  } finally {
    await vscode.commands.executeCommand("workbench.action.revertAndCloseActiveEditor");
    await Promise.allSettled([removeFile(buildPath), removeFile(libraryPath)]);
  }
}

/** A finding's code as text, whether it comes with a link or without. */
export function codeOf({ code }: vscode.Diagnostic): string {
  return String(typeof code === "object" ? code.value : code);
}

/** True when a finding is the draft's fault. */
export const isFault = (finding: vscode.Diagnostic): boolean => codeOf(finding) === faultCode;
