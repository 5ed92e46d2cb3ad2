import { date, text, word } from "./fields.ts";

/** What a record of a bicycle as built states about itself. */
export const recordFields = {
  date: date("Day on which it was measured.", { essential: true, example: "2026-11-20" }),
  by: text("Who measured it.", { essential: true, example: '"K. P."' }),
  spec: text(
    "Digest of the specification that it was built to, as the program shows it for the build; without quotes.",
    {
      omitted: "none",
    },
  ),
  occasion: word(
    {
      built: "When it was built.",
      "first-check": "After the first rides.",
      service: "At a service.",
      inspection: "After a crash or a doubt.",
    },
    "Why it was measured.",
    { omitted: "none" },
  ),
  note: text("A remark.", { omitted: "none" }),
} as const;

/** Groups of measurements that are no assemblies of a build, each with what belongs to it. */
export const recordGroups = {
  fit: "The position as measured on the bicycle.",
  torque: "Torques as they were applied, by the name of the joint.",
  whole: "What is measured on the bicycle as a whole.",
} as const;
