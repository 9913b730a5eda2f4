// What the scripts hand each other, by one name each: the facts a page brings, once they are read, and
// what is made of them. The Python that writes each is named beside it.

type Fraction = import("./js/amounts/fraction.js").Fraction;
/** What stands as JSON in a page or a file of the book, before it is read. */
type Written = Record<string, any>;
/** Words for the reader by name, and what fills their blanks. */
type Texts = Record<string, string>;

// --- amounts (publish/scaling_data.py)

interface Amount { low: Fraction; high: Fraction; unit: string; noun?: string; about?: boolean }
interface Unit { base: Fraction; size: string; words: string[]; shown: string; many: string; decimal: boolean }
interface Rung {
  begins: Fraction; steps: Fraction[]; also: Fraction[]; finer: Fraction[]; between: string;
  parts: { unit: string; of: Fraction[] }[];
}
interface Tin { words: string; unit: string; across: string | Fraction; along: string | null }
interface Measures { system: string; by: string }
/** Figures of strength and servings, as core/batch has them. */
interface Figures {
  density: number[]; sugar_ml_per_g: number; low_share: number; high_share: number; least_drinks: number;
  drink: { ethanol_ml: number; many: string; how: string }; per_litre: string; least_abv: number;
}
interface Tables {
  units: Record<string, Unit>;
  ladders: Record<string, Record<string, Rung[]>>;
  words: Record<string, Map<string, string>>;
  offered: Record<string, string[]>;
  counted: Record<string, string[]>;
  near: Record<string, string>;
  blind: Record<string, string>;
  halves_below: number;
  typed_sizes: Record<string, [string, string][]>;
  most_times: number;
  least_part: number;
  boiled_at_once: { kinds: string[]; most: number; words: string };
  one_and_many: { same: string[]; odd: Texts; endings: [string, string][] };
  finished: Figures;
}

// --- a recipe as it is scaled (publish/scaling_data.py), and a batch of it

interface ScaleLine {
  form: string; item: string; one: string; many: string; written: string; note: string; note_counts: boolean;
  group: string; optional: boolean; low: Fraction; high: Fraction; unit: string; noun_one: string;
  noun_many: string; pack: string; about: boolean; per_low: Fraction; per_high: Fraction; of: number | null; scales: string;
  tolerance: Fraction; stated: boolean; near: Fraction; tight: string; halves: boolean; spooned: boolean;
  density: Fraction | null; density_source: string; each_g: Fraction | null;
}
/** A part of an ingredient, as a step of the method names it. */
interface LinePart { low: Fraction; high: Fraction; unit: string; about?: boolean; written: string }
interface ScaleRecipe {
  kind: string; system: string; makes: Amount; makes_written: string; each: Amount | null; each_written: string;
  thing: string; things: string; container: string; container_many: string; lines: ScaleLine[];
  makes_ml: Fraction | null; finished_density: Fraction | null; stands_ml: Fraction; vessel_share: Fraction;
  vessel_ml: Fraction | null; container_ml: Fraction | null; headspace_ml: Fraction | null; tin: Tin | null;
  notes: Record<"larger" | "smaller", string[]>; finished: FinishedData;
}
interface FinishedData {
  yield: { parts: [string, string][]; spread: string; source: string } | null;
  containers: [string, string, string, string][];
  strength: StrengthData | null;
  fold: FoldData | null;
}
/** A part of a drink: its line, then grams of ethanol, water, sugar and millilitres besides, twice. */
type StrengthPart = [number, number[], number[]];
interface StrengthData {
  abv: number; uncertainty: string; how: string; doubt: string; proviso?: string; parts: StrengthPart[] | null;
  pours: [string, string, string][];
}
interface FoldData { how: string; brings: [number, string][][]; strong_enough: boolean }

interface Filled { count: bigint; size: Amount; brim: boolean; thing: string }
type Target =
  | { sort: "times"; factor: Fraction }
  | { sort: "makes"; amount: Amount; things: string }
  | { sort: "fill"; containers: Filled[] }
  | { sort: "have"; have: { amount: Amount; words: string }[] }
  | { sort: "tin"; tin: Tin }
  | { sort: "vessel"; capacity: Amount };
interface LeftOver { item: string; amount: Fraction; unit: string }
interface Solved { factor: Fraction; containers: Filled[]; scarcest: string; left: LeftOver[] }
/** One line of a batch: what was asked exactly, between which ends, and what a kitchen measures. */
interface ScaledLine {
  item: string; item_text: string; amount_text: string; exact: Fraction | null; unit: string;
  low: Fraction | null; high: Fraction | null; holds: boolean; off: Fraction; why: string; aside: string;
  note: string;
}
/** A line that was measured or counted, not only said. */
type MeasuredLine = ScaledLine & { exact: Fraction; low: Fraction; high: Fraction };
/** A counted line, and from how many to how many of it one batch takes. */
type Counted = [ScaleLine, Fraction, Fraction];
type Batch = ReturnType<typeof import("./js/size/scale.js").scale>;
/** What a batch comes to, in words. */
interface Fact { name: string; text: string; how: string; brief: boolean }
/** What a batch leaves to bottle, in ml. */
interface ToBottle { parts: [string, Fraction][]; volume: Fraction; low: Fraction; high: Fraction; source: string }

// --- days: each is its number from 1970-01-01 (publish/timeline_data.py)

/** From so many to so many of a unit: [2, 3, "week"]. */
type Span = [number, number, string];
interface Stage {
  name: string; word: string; role: string; minutes: number; every?: Span; until?: Span; lasts?: Span;
  after?: Span; age?: Span; age_from?: string; before_giving?: number; times?: number; condition?: string;
  where?: string;
}
interface DatedStage {
  name: string; word: string; role: string; from: number; to: number; to_earliest: number; dates: number[];
  minutes: number; times: number; every: Span | null; condition: string; where: string; open_ended: boolean;
  begins_minute: number; ends_minute: number;
}
interface WhenRecipe {
  slug: string; title: string; stages: Stage[]; keep: Span | null; season: number[]; href: string;
}
type Laid = ReturnType<typeof import("./js/when/stage-dates.js").layOut>;
type Plan = ReturnType<typeof import("./js/when/timeline.js").planForward>;
interface DateRow { name: string; when: string; handsOn: string; role: string; from: number }
interface CalendarEntry {
  uid: string; title: string; description: string; day: number; rule: string; reminders: number[];
}
interface Keeps {
  term: string; span: Span | null; language: string; quotes: string[]; words: Texts;
}

// --- the drawing of a timeline: minutes from its start, then places in the picture

/** What is drawn of a stage: how it looks, from which minute to which. */
type Band = [string, number, number];
interface RawLane { role: string; words: string; bands?: Band[]; ticks?: number[]; dots?: number[] }
type Lane = ReturnType<typeof import("./js/when/timeline-drawing.js").drawTimeline>["lanes"][number];
type Picture = ReturnType<typeof import("./js/when/timeline-drawing.js").drawTimeline>;
interface AxisMark { x: number; word: string; day: number | null }

// --- paper: lengths in mm (publish/paper_data.py)

interface Size { width: number; height: number }
interface Paper extends Size { id: string; name: string }
interface Box extends Size { name: string; id?: string; turned?: boolean; folded?: boolean }
interface Grid {
  paper: Paper; box: Box; columns: number; rows: number; left: number; top: number; pitchX: number;
  pitchY: number;
}
/** `back` is the step of type of a flat card's other side, `foot` the inner panel that bears a fold's foot. */
interface Arrangement { sides: number; front: string; back?: string; foot?: string }
/** How a card was found to fit: its arrangement, its type, and what takes too much room. */
interface Fit extends Arrangement {
  fits: boolean; level: string; over: string[]; share?: number; pitch?: number | null;
  isApart?: boolean;
}
/** What is known of how a tag fits. */
type TagFit = Omit<Fit, "front">;
interface Design {
  id: string; ink: boolean; large: boolean; sides: string; portrait: boolean; beside: boolean;
}
interface PaperData {
  papers: Paper[]; sizes: (Box & { id: string })[]; designs: Design[]; tags: TagMeasures;
  labels: { name: string; measures: string }[]; leastLabel: [number, number];
}
interface TagMeasures {
  fixed: Record<string, [number, number]>; larger: Record<string, [number, number][]>; leastLid: number;
  lidRim: number; clearance: number; leastHeight: number; overlap: number;
}
/** How a kitchen sheet is set: its type in pt, and where the dates stand. */
interface SheetType { size: number; place: string }
/** The parts of a card that change their places. */
interface CardParts {
  face: HTMLElement; back: HTMLElement; emblem: HTMLElement | null; head: HTMLElement; lists: HTMLElement[];
  facts: HTMLElement[]; code: HTMLElement | null; foot: HTMLElement; mark: HTMLElement | null;
  address: HTMLElement | null; isLarge: boolean;
}
/** A card or tag as it is to be printed. */
interface FittedCard { element: HTMLElement; fit: Fit | TagFit; title: string | undefined }

// --- what is cut for a gift (core/paper/gift_pieces.py)

interface Piece extends Size {
  kind: string; name: string; words: string; wall: number; lid: number; overlap: number; turned: boolean;
}
type Point = [number, number];
interface CutsData {
  measures: Record<string, number>; shares: Record<string, number>; papers: Paper[];
  layout: { foot: number; words: number; leastWide: number };
}
interface Room extends Size { x: number; y: number }
interface Laying { piece: number; sheet: number; x: number; y: number; turned: boolean }
interface LaidPiece {
  piece: Piece; x: number; y: number; boxWidth: number; boxHeight: number; turned: boolean;
}
interface WantedPieces { pieces: Piece[]; copies: number; large: Piece[]; refused: string | null }
