/** A well-formed line of each kind, for messages that say what was expected. */

import type { DeclarationKeyword } from "./tree.ts";

export const waiveExample =
  'waive drivetrain/chain-length at drivetrain.chain "One spare pair of links" until 2027-03-31';

export const headerExamples: Readonly<Record<DeclarationKeyword, string>> = {
  workshop: 'workshop north-yard "North Yard Cycles" {',
  part: 'part cassette corrie.wide-10-52 "Corrie wide 10-52" {',
  build: 'build fellside-l "Fellside 29 hardtail, size L" {',
  standard: 'standard axle 12x148 "12 mm by 148 mm" {',
  rule: 'rule tall-stack "No more than 30 mm of spacers under a stem" {',
  record: 'record "FL-0031" of fellside-l {',
};

export function baseExample(keyword: DeclarationKeyword): string {
  return keyword === "part"
    ? "part cassette corrie.wide-11-50 from corrie.wide-10-52 {"
    : "build fellside-m from fellside-l {";
}
