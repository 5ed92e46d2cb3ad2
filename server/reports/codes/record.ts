/** Codes of what is to be said of records besides what was measured. */
export const recordCodes: Readonly<Record<string, string>> = {
  "record/date-order":
    "Serials that count up are given out in order, and this one is dated before the one with the number below. One of the two dates may be a slip.",
  "record/future-date": "A record is dated after today. What is written down was measured on a day that has been.",
  "record/incomplete":
    "A record says when something was measured and by whom: without it nobody can judge later what the figures are worth.",
  "record/missing-fact":
    "What was measured cannot be compared, since something of the build or its parts is stated nowhere. It is neither right nor wrong until somebody states it.",
  "record/no-serial":
    "A record is of one bicycle, and its serial number is what tells it from the others of the same build.",
  "record/no-spec":
    "A record without the digest of its specification is compared with the build as it stands. With the digest it is said when the recipe has moved on since.",
  "record/spec-moved-on":
    "The build or one of its parts states something else today than when the bicycle was built. Only the digest of the old specification is kept, so what was measured cannot be compared with it: what differs from today's recipe is no fault of an old bicycle.",
  "record/spec-unreadable":
    "The digest of a specification is six digits from 0 to 9 and a to f at least, as the program shows it for the build.",
};
