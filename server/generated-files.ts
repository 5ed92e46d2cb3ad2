import { textMateGrammar } from "../grammar/textmate.ts";
import { declarationKeywords } from "../grammar/tree.ts";
import { units } from "../grammar/units.ts";
import { librarySchema } from "./interchange/library-schema.ts";
import { calculationsPage } from "./reference/calculations-page.ts";
import { checksPage } from "./reference/checks-page.ts";
import { glossaryPage } from "./reference/glossary-page.ts";
import { grammarTables } from "./reference/grammar-tables.ts";
import { kindsPage } from "./reference/kinds-page.ts";
import { languagePage } from "./reference/language-page.ts";
import { recordsPage } from "./reference/records-page.ts";
import { slotsPage } from "./reference/slots-page.ts";
import { standardsPage } from "./reference/standards-page.ts";

/**
 * Every file that is written from the declarations: paths below the project's root, and their texts. A test holds
 * the files in the project equal to these.
 */
export function generatedFiles(): ReadonlyMap<string, string> {
  return new Map([
    [
      "grammar/generated/ferrule.tmLanguage.json",
      `${JSON.stringify(textMateGrammar(grammarTables(declarationKeywords, units)), null, 2)}\n`,
    ],
    ["grammar/generated/library.schema.json", `${JSON.stringify(librarySchema(), null, 2)}\n`],
    ["grammar/reference/language.md", languagePage()],
    ["grammar/reference/kinds.md", kindsPage()],
    ["grammar/reference/builds.md", slotsPage()],
    ["grammar/reference/standards.md", standardsPage()],
    ["grammar/reference/checks.md", checksPage()],
    ["grammar/reference/records.md", recordsPage()],
    ["grammar/reference/calculations.md", calculationsPage()],
    ["grammar/reference/glossary.md", glossaryPage()],
  ]);
}
