/**
 * What the codes mean that no check stands behind: those of the text, of values, of names, and of waivers.
 * A test holds that every code in the sources has a row here or a check of its own.
 */
export const findingCodes: ReadonlyMap<string, string> = new Map([]);
