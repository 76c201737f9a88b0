import Caution from './Caution.astro';
import CodeFrame from './CodeFrame.astro';
import Drawing from './Drawing.astro';
import Example from './Example.astro';
import Figure from './Figure.astro';
import Formula from './Formula.astro';
import GlossaryList from './GlossaryList.astro';
import LookupTable from './LookupTable.astro';
import MixedPractice from './MixedPractice.astro';
import Practice from './Practice.astro';
import Recording from './Recording.astro';
import Scene from './Scene.astro';
import SectionHeading from './SectionHeading.astro';
import Source from './Source.astro';
import SourceList from './SourceList.astro';
import SubsectionHeading from './SubsectionHeading.astro';
import TableFrame from './TableFrame.astro';
import Term from './Term.astro';
import Value from './Value.astro';
import Worksheet from './Worksheet.astro';
import { inChapter } from './in-chapter.ts';

/** The closed list of what a chapter may write. Chapters import nothing themselves. */
const chapterComponents = {
  Caution,
  Drawing,
  Example,
  Figure,
  Formula,
  GlossaryList,
  LookupTable,
  MixedPractice,
  Practice,
  Recording,
  Scene,
  Source,
  SourceList,
  Term,
  Value,
  Worksheet,
};

/** What stands for the parts of a chapter: its components, and frames for what Markdown writes. */
export const chapterParts = {
  ...Object.fromEntries(
    Object.entries(chapterComponents).map(([name, component]) => [
      name,
      inChapter(name, component),
    ]),
  ),
  // Tables written in Markdown scroll inside a frame on a narrow screen.
  table: TableFrame,
  // Commands between ``` lines scroll as well.
  pre: CodeFrame,
  // Headings carry a link to themselves.
  h2: SectionHeading,
  h3: SubsectionHeading,
};
