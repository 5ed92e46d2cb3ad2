/** Put in by the bundler. */
declare const ferruleVersion: string;
declare const ferruleDigest: string;

/** The version of this program, from package.json. */
export const version = typeof ferruleVersion === "string" ? ferruleVersion : "0.0.0";

/** Differs whenever the program does; empty when it is run from its sources. */
export const programDigest = typeof ferruleDigest === "string" ? ferruleDigest : "";
