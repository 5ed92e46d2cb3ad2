/** A workshop with one build whose cassette is too large for its derailleur, and one that says nothing of either. */
export const library = `part cassette corrie.wide-10-52 "Corrie wide 10-52" {
  speeds: 12
  cogs: 10-12-14-16-18-21-24-28-32-38-45-52 t
}

part cassette corrie.narrow-10-44 "Corrie narrow 10-44" {
  speeds: 12
  cogs: 10-12-14-16-18-20-22-25-28-32-38-44 t
}

part rear-derailleur corrie.mid-12 "Corrie mid 12" {
  speeds: 12
  largest-cog: 46 t
}
`;

export const wrongBuild = `build fellside "Fellside 29" {
  category: mountain
  drivetrain {
    cassette: corrie.wide-10-52
    rear-derailleur: corrie.mid-12
  }
}
`;

export const rightBuild = wrongBuild.replace("wide-10-52", "narrow-10-44").replace("fellside", "gillside");

export const workshopFile = `workshop north-yard "North Yard Cycles" {
  language: 1
  currency: GBP
}
`;

export const workshop = {
  "workshop.ferrule": workshopFile,
  "parts/drivetrain.ferrule": library,
  "builds/wrong.ferrule": wrongBuild,
  "builds/right.ferrule": rightBuild,
};
