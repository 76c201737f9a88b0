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
    how: 'Open the can at arm’s length, at the window. By width and holes on the outermost turn, without unwinding. Until you know, treat it as nitrate: no flame, no lamp, no heat. If it is 35 mm or fits nothing, close the can.',
  },
  {
    id: 'smell',
    what: 'Smell the open can',
    how: 'Notice what comes from the can at arm’s length. Do not sniff at the film. If it is sharp or sweet and not vinegar, close it.',
  },
  {
    id: 'strange-smell',
    what: 'Explain the smell',
    how: 'Close the can and air the room. Ask where it lay: moth balls smell too. Ask someone who knows film before you go on.',
  },
  {
    id: 'deposit',
    what: 'Look for powder, drops and turns that stick',
    how: 'On both sides of the roll, before you unwind anything. If turns hold together, stop: do not pull.',
  },
  {
    id: 'mould',
    what: 'Look for mould',
    how: 'Spots and threads on the edges of the winding. Do not blow on it; wear gloves, and a mask if you see any.',
  },
  {
    id: 'clean-mould',
    what: 'Have the dry mould cleaned off',
    how: 'Outdoors or under extraction, dry, with gloves, mask and eye protection.',
  },
  {
    id: 'warp',
    what: 'Look whether it is flat',
    how: 'Across the side of the roll: spokes, hills and gaps mean warp.',
  },
  {
    id: 'base',
    what: 'Find the base',
    how: 'Hold a turn of the film itself, past the leader, between a polarising filter and a dark flat screen: light or colours mean polyester. Nothing is cut for this.',
  },
  {
    id: 'base-again',
    what: 'Look at base and year again',
    how: 'Repeat the test with the filter on the film itself, past the leader, and ask how the year is known. If the can smells, look for a sour reel beside it.',
  },
  {
    id: 'brittleness',
    what: 'Bend the film itself',
    how: 'Go past the leader, which is often another film. Close a wide loop slowly, at most to the width of your thumb. If it cracks, stop.',
  },
  {
    id: 'acid',
    what: 'Lay an acid strip in',
    how: 'Put it on the roll, close the can, write the time on it, and read it after a day. Do the whole box in one evening. Wind the film only when you have read it.',
  },
  {
    id: 'shrinkage',
    what: 'Measure the shrinkage',
    how: 'Over 100 pitches past the leader, at the head now, in the middle and at the end while you wind. The largest counts.',
  },
  {
    id: 'shrinkage-again',
    what: 'Measure the shrinkage again',
    how: 'Check the gauge, call the first hole 0, count to hole 100 with a slip at every tenth, at three places.',
  },
  {
    id: 'perforations',
    what: 'Wind it by hand and feel the holes',
    how: 'Slowly, the edges between gloved thumb and finger. A paper slip at each damage.',
  },
  {
    id: 'splices',
    what: 'Look at every splice',
    how: 'Stop at each one and bend it gently over a finger. If it lifts or cracks, it is remade.',
  },
  {
    id: 'stripe',
    what: 'Look for a stripe',
    how: 'A dull brown band along an edge, seen with light from the side. It decides how the film is cleaned; one that lifts keeps it off this bench.',
  },
  {
    id: 'mend-perforations',
    what: 'Mend the torn holes',
    how: 'With perforated tape, no hole half covered.',
  },
  {
    id: 'remake-splices',
    what: 'Remake the weak splices',
    how: 'Bend each one again.',
  },
];
