/** Codes of what is missing from a build, and of its waivers. */
export const buildCodes: Readonly<Record<string, string>> = {
  "build/alternates-limit":
    "The build's alternates make more combinations than are tried for one question. Those nearest to the first-named parts were tried; the others are neither right nor wrong.",
  "build/endless-waiver": "The waiver has no last day, so nobody is asked again whether its reason still holds.",
  "build/idle-waiver": "The waiver silences nothing: what it was for does not fail. It can go.",
  "build/missing-fact":
    "A fact that some check or number needs is stated nowhere. It is neither right nor wrong until somebody states it; state it where the part is declared, or in the build when it is about how the part is installed.",
  "build/out-of-date-waiver": "The waiver's last day has passed, so what it silenced is reported again.",
  "build/unknown-waiver": "The waiver names a code that no check has.",
  "build/waiver-date": "The last day of a waiver is written year, month, day: 2027-03-31.",
  "build/waiver-path": "The check is asked in several places of a build; the waiver has to say where it is waived.",
  "build/waiver-reason": "A waiver without a reason cannot be judged later, so it does not count.",
};
