// The pages that are no chapters: what each is called and what is on it, said once for the page itself,
// the menu, the contents, the search and the list of editions.

export interface ToolPage {
  readonly href: string;
  /** What the page is called, everywhere. */
  readonly name: string;
  /** Heading and window title, where the page itself is handed to somebody and says it otherwise. */
  readonly heading?: string;
  /** Name in the menu, where the room is short. */
  readonly menu?: string;
  /** A sentence or two for search results, outside and in the book. */
  readonly description: string;
  /** A line of the contents, for what one prints or keeps. */
  readonly inContents?: string;
  /** Words for it that readers use; searched, not shown. A page without them is not searched for. */
  readonly words?: readonly string[];
}

/** By id, in the order of the contents. */
export const TOOL_PAGES = {
  bench: {
    href: '/bench/',
    name: 'Your bench',
    description:
      'Describe your projector, camera and reel once; every worksheet opens with them. Save, share and load a bench.',
    inContents: 'Your projector, camera and reel, described once for all worksheets.',
    words: ['settings', 'preferences', 'units', 'metric', 'imperial', 'region', 'export', 'import'],
  },
  box: {
    href: '/box/',
    name: 'The box',
    description:
      'A job with all its reels: a table to type or paste into, totals, the reel on the table for every worksheet, and the papers from receipt to return note.',
    inContents: 'A job with all its reels, its totals and its papers, kept on your device.',
    words: [
      'job',
      'jobs',
      'reel list',
      'inventory',
      'shelf',
      'receipt',
      'consent form',
      'condition report',
      'quotation',
      'labels',
      'return note',
      'reel on the table',
      'spreadsheet',
      'CSV',
      'paste',
      'quarantine',
      'customer data',
      'privacy',
    ],
  },
  cards: {
    href: '/cards/',
    name: 'Cards to print',
    description:
      'Every worksheet as a card of postcard size, four to a sheet of A4: the rule where you judge a reel, the numbers of your bench where you compute.',
    inContents: 'Every worksheet as a card with your numbers, four to a page.',
    words: ['bench cards', 'A6', 'print', 'cheat sheet'],
  },
  faults: {
    href: '/faults/',
    name: 'Dictionary of faults',
    description:
      'Faults of shutter, gate, film, lens, colour and file, each as a picture beside the healthy one, with its cause, its cure in three steps and the sheet that computes it.',
    inContents: 'What do you see? Every fault as a picture, with cause and cure.',
    words: [
      'what is wrong',
      'troubleshooting',
      'symptoms',
      'pictures of faults',
      'gallery',
      'help',
    ],
  },
  jobSheet: {
    href: '/job-sheet/',
    name: 'Job sheet',
    description:
      'One reel from the can to the files: condition, length, match, light, whole frames, retiming, run, files and time, to fill in and print.',
    inContents: 'One reel on one sheet of paper, for the bench.',
    words: ['work order', 'log', 'protocol', 'checklist', 'print'],
  },
  customerSheet: {
    href: '/customer-sheet/',
    name: 'Customer sheet',
    heading: 'About your film',
    description:
      'A sheet for the customer, in plain words: what is on the reel, what can be had of it and, if wanted, how long it takes and what it costs.',
    inContents: 'The same reel in plain words, for its owner.',
    words: ['offer', 'estimate', 'quote', 'leaflet', 'print'],
  },
  yourFilm: {
    href: '/your-film/',
    name: 'Your film in plain words',
    description:
      'For the owner of a film: what you get, what it costs and whether the film can be harmed, in everyday words; details unfold when you want them.',
    inContents: 'For the owner of a film: three questions answered in everyday words.',
    words: [
      'customer',
      'client',
      'what do I get',
      'how much',
      'price',
      'is it safe',
      'damage',
      'family film',
      'frequently asked questions',
    ],
  },
  cases: {
    href: '/cases/',
    name: 'Practice by cases',
    menu: 'Cases',
    description:
      'Reels, recordings, folders and wishes to judge, with sums of the bench: ten questions at a time, tasks for the hands, and a record of what you have shown.',
    inContents: 'Ten questions at a time, tasks for the hands, and a record of what was shown.',
    words: ['training', 'quiz', 'exam', 'test yourself', 'apprentice', 'record', 'seed'],
  },
  trainer: {
    href: '/trainer/',
    name: 'For the trainer',
    menu: 'Trainer',
    description:
      'Question sheets and answer sheets from the kinds, level and number you choose, and a page that says what a trainee has shown and when.',
    inContents: 'Question sheets with their answers, and a page that says what was shown and when.',
    words: ['teacher', 'class', 'exam paper', 'worksheet', 'certificate', 'print'],
  },
  data: {
    href: '/data/',
    name: 'Tables for machines',
    menu: 'Data',
    description:
      'The tables of the book as CSV and JSON files for a spreadsheet or a program, with every column explained.',
    inContents: 'The tables of the book as files for a spreadsheet or a program.',
    words: ['download', 'spreadsheet', 'API', 'data', 'export'],
  },
  editions: {
    href: '/editions/',
    name: 'Editions',
    description:
      'What was wrong in this book, what is right, and when it was corrected; points of safety first.',
    inContents: 'What was corrected in this book, and when.',
    words: ['corrections', 'errata', 'changes', 'version', 'what is new', 'mistakes'],
  },
  contents: {
    href: '/contents/',
    name: 'Contents',
    description:
      'All parts, chapters and worksheets of the book in the order of the job, and the pages to print.',
  },
  search: {
    href: '/search/',
    name: 'Search',
    description:
      'Search the book: chapters, worksheets, worked examples, tables, glossary and sources.',
  },
  licences: {
    href: '/licences/',
    name: 'Licences',
    description:
      'The licence of this book, and of everything by others that is sent to a reader with it.',
  },
} as const satisfies Readonly<Record<string, ToolPage>>;

export type ToolPageId = keyof typeof TOOL_PAGES;

/** The pages in order, as the lists that are made of them need them. */
export const toolPages: readonly ToolPage[] = Object.values(TOOL_PAGES);

/** Window title and description of a tool page. */
export function pageHead(id: ToolPageId): { readonly title: string; readonly description: string } {
  const { heading, name, description }: ToolPage = TOOL_PAGES[id];
  return { title: heading ?? name, description };
}
