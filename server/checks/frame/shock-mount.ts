import { matingCheck } from "../shared/mating.ts";

const end = {
  other: "takes",
  nothing: "takes no rear shock",
  remedy: "fit a shock, or mounting hardware, of the frame's width and bolt.",
};

export default matingCheck({
  code: "frame/shock-mount",
  title: "Both ends of the rear shock fit their mounts",
  joints: {
    "shock-body-end": { ...end, one: "has at its body end" },
    "shock-shaft-end": { ...end, one: "has at its shaft end" },
  },
  explanation:
    "A rear shock is held by an eye with bushes of a certain width on a bolt of a certain diameter, or by two bolts into " +
    "the sides of its body, which is called a trunnion. The two ends often differ, and a shock of the right length still " +
    "does not go in when one of them is wrong. Bushes and bolts are small parts that can be changed for others of the " +
    "frame's width; an eye cannot be made a trunnion, nor the other way round. A trunnion shock is shorter for the same " +
    "travel.",
  source: "from memory; the makers' own statements decide",
  caution: "Air is let out of an air spring before the shock is taken out or opened.",
  examples: {
    holds: `
part frame example.fell "Fell" { shock-mount-body-end: trunnion-54; shock-mount-shaft-end: eye-30x8 }
part rear-shock example.shock "Shock" { mount-body-end: trunnion-54; mount-shaft-end: eye-30x8 }

build example "A trunnion and an eye" {
  frame: example.fell
  rear-shock: example.shock
}
`,
    fails: `
part frame example.fell "Fell" { shock-mount-body-end: trunnion-54; shock-mount-shaft-end: eye-30x8 }
part rear-shock example.shock "Shock" { mount-body-end: trunnion-54; mount-shaft-end: eye-22.2x8 }

build example "Bushes too narrow for the shaft end" {
  frame: example.fell
  rear-shock: example.shock
}
`,
  },
});
