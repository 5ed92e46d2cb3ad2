import { defineKind } from "../define.ts";
import { code, quantity, word } from "../fields.ts";

/** A dynamo outside the hub. */
export const dynamo = defineKind({
  name: "dynamo",
  noun: "a dynamo",
  description: "A dynamo that runs on the tyre or rim; a hub dynamo is a fact of its hub.",
  fields: {
    "runs-on": word({ tyre: "The tyre's side.", rim: "The rim." }, "What drives it.", {
      essential: true,
      group: "Fit",
    }),
    "dynamo-voltage": quantity("voltage", "Its voltage.", { essential: true, group: "Electronics", highest: 60 }),
    "dynamo-power": quantity("power", "Its power.", { essential: true, group: "Electronics", highest: 20 }),
    connector: code("connector", "Connector of its lead.", { group: "Electronics" }),
  },
});
