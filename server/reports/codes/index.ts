import { buildCodes } from "./build.ts";
import { expressionCodes } from "./expression.ts";
import { languageCodes } from "./language.ts";
import { modelCodes } from "./model.ts";
import { recordCodes } from "./record.ts";
import { valueCodes } from "./value.ts";

/**
 * What the codes mean that no check stands behind. A test holds that every code in the sources has a row here or a
 * check of its own.
 */
export const findingCodes: ReadonlyMap<string, string> = new Map(
  Object.entries({ ...languageCodes, ...valueCodes, ...modelCodes, ...buildCodes, ...expressionCodes, ...recordCodes }),
);
