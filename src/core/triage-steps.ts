// What is still to be done before a reel may be run, in the order in which it harms least.

export type TriageStepId =
  | 'gauge'
  | 'smell'
  | 'strange-smell'
  | 'deposit'
  | 'mould'
  | 'clean-mould'
  | 'warp'
  | 'base'
  | 'base-again'
  | 'brittleness'
  | 'acid'
  | 'shrinkage'
  | 'shrinkage-again'
  | 'perforations'
  | 'splices'
  | 'stripe'
  | 'mend-perforations'
  | 'remake-splices';

/** One thing to do, and how. */
export interface TriageStep {
  readonly id: TriageStepId;
  readonly what: string;
  readonly how: string;
}

/**
 * Every step in its order: what protects people first, then what needs no unwinding, then what needs
 * a turn or two of film, then winding by hand, then mending. The acid strip goes in before the film
 * is wound, because a level of 2 or 3 ends the matter without winding; it needs a day.
 *
 * @source common practice, no source (the order)
 * @source heritage-science-2020, pritchard-glossary, transfer-guide, national-archives-mould
 */
export const TRIAGE_STEPS: readonly TriageStep[] = [
  {
    id: 'gauge',
    what: 'Name the gauge',
    how: 'Look at the width and the holes on the outermost turn, by the window, without unwinding. Until you know, treat the can as nitrate: no flame, no lamp, no heat. If it is 35 mm or fits nothing, close the can.',
  },
  {
    id: 'smell',
    what: 'Smell the open can',
    how: 'Open it at arm’s length at the window and notice what comes. Do not sniff at the film. If it is sharp or sweet and not vinegar, close it.',
  },
  {
    id: 'strange-smell',
    what: 'Explain the smell',
    how: 'Close the can and air the room. Ask where it lay: moth balls and cleaning fluid smell too. Let someone who knows film smell it before you go on.',
  },
  {
    id: 'deposit',
    what: 'Look for powder, drops and turns that stick',
    how: 'Look at both sides of the roll before you unwind anything. If turns hold together, stop: do not pull.',
  },
  {
    id: 'mould',
    what: 'Look for mould',
    how: 'Look for spots and threads on the edges of the winding. Do not blow on it; wear gloves, and a mask if you see any.',
  },
  {
    id: 'clean-mould',
    what: 'Have the dry mould cleaned off',
    how: 'Outdoors or under extraction, dry, with gloves, mask and eye protection; bag the cloth.',
  },
  {
    id: 'warp',
    what: 'Look whether it is flat',
    how: 'Look across the side of the roll: spokes, hills and gaps mean warp.',
  },
  {
    id: 'base',
    what: 'Find the base',
    how: 'Hold a turn of the film itself, past the leader, between a polarising filter and a dark flat screen: light or colours mean polyester. Nothing is cut for this.',
  },
  {
    id: 'base-again',
    what: 'Look at base and year again',
    how: 'What was found does not go with polyester. Repeat the test with the polarising filter on the film itself, past the leader, and ask how the year is known. If the can smells, look for a sour reel beside it.',
  },
  {
    id: 'brittleness',
    what: 'Bend the film itself',
    how: 'Go past the leader, which is often another film. Lay the film in a loop as wide as your thumb. If it cracks, stop.',
  },
  {
    id: 'acid',
    what: 'Lay an acid strip in',
    how: 'Put it on the roll, close the can, write the time on it, and read it after a day. Do the whole box in one evening. Wind the film only when you have read it.',
  },
  {
    id: 'shrinkage',
    what: 'Measure the shrinkage',
    how: 'Over 100 pitches of the film itself, at the head now, in the middle and at the end while you wind. The largest upper bound counts.',
  },
  {
    id: 'shrinkage-again',
    what: 'Measure the shrinkage again',
    how: 'This reading cannot be. Check the gauge, call the first hole 0, count to hole 100 with a slip at every tenth, and measure at three places.',
  },
  {
    id: 'perforations',
    what: 'Wind it by hand and feel the holes',
    how: 'Slowly, film between gloved thumb and finger at its edges. A paper slip at each damage.',
  },
  {
    id: 'splices',
    what: 'Look at every splice',
    how: 'Stop at each one and bend it gently over a finger. If it lifts or cracks, it is remade.',
  },
  {
    id: 'stripe',
    what: 'Look for a stripe',
    how: 'Along both edges, on both sides, with light from the side: a dull brown band. It decides how the film is cleaned.',
  },
  {
    id: 'mend-perforations',
    what: 'Mend the torn holes',
    how: 'With perforated tape, no hole half covered. Note each place on the job sheet.',
  },
  {
    id: 'remake-splices',
    what: 'Remake the weak splices',
    how: 'Old glue off, tape on both sides, the stripe left bare. Bend each one again.',
  },
];
