/** Put in by the bundler from package.json. */
declare const ferruleVersion: string;

/** The version of this program. */
export const version = typeof ferruleVersion === "string" ? ferruleVersion : "0.0.0";
