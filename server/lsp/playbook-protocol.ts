// What the server and a client tell each other about a whole playbook: the files of the workspace, its plays with their times, the
// order of a book's sections, and the text of a new play. Both ends read it through these schemas.
import * as v from 'valibot';
import { PROTOCOL_VERSION } from './protocol.ts';

const version = v.literal(PROTOCOL_VERSION);
const count = v.pipe(v.number(), v.integer(), v.minValue(0));
const position = v.object({ line: count, character: count });
const range = v.object({ start: position, end: position });

/** Requests, server to client, of a client that says `files: true` at the start: it knows file systems that the server does not. */
export const listFilesMethod = 'setwright/listFiles';
export const readFileMethod = 'setwright/readFile';
/** Uris of every `.play` file of the workspace. */
const listSchema = v.array(v.string());
/** The text of a file; null where it is not there or may not be read. */
const textSchema = v.nullable(v.string());
const readFileSchema = v.object({ version, uri: v.string() });

/** Request: the plays of the workspace, or of one document (`uri`). `again`: files are looked for once more. */
export const playbookMethod = 'setwright/playbook';
const playbookQuestionSchema = v.object({ version, uri: v.optional(v.string()), again: v.optional(v.boolean()) });

const needed = v.object({
  /** Whole seconds that must be on the clock when it is called, and when the team already stands in its places. */
  fromCall: count,
  alreadySet: count,
});
const playEntry = v.object({
  uri: v.string(),
  key: v.string(),
  name: v.string(),
  line: count,
  lastLine: count,
  tags: v.array(v.string()),
  situation: v.array(v.string()),
  /** `man`, or the zone's name. */
  against: v.nullable(v.string()),
  /** The alignment's name, where one is named. */
  from: v.nullable(v.string()),
  throwIn: v.nullable(v.picklist(['sideline', 'baseline'])),
  level: v.string(),
  /** What the coach wrote: `call with 22 to 26 on the clock`. */
  call: v.nullable(v.object({ from: v.number(), to: v.number() })),
  /** For the first look, and for all looks; null where it has none. */
  first: v.nullable(needed),
  all: v.nullable(needed),
  looks: v.array(v.object({ label: v.string(), needs: count })),
  errors: count,
  warnings: count,
});
const section = v.object({
  name: v.string(),
  line: count,
  /** In the order of the section's line; `play` is the place in `plays`, null where there is no such play. */
  plays: v.array(v.object({ name: v.string(), play: v.nullable(count) })),
});
const playbookSchema = v.object({
  plays: v.array(playEntry),
  books: v.array(v.object({ uri: v.string(), name: v.string(), line: count, sections: v.array(section) })),
  /** Files are still being read: asked again, it may be more. */
  unread: v.optional(v.boolean()),
});
export type PlayEntry = v.InferOutput<typeof playEntry>;
export type Playbook = v.InferOutput<typeof playbookSchema>;
export type BookEntry = Playbook['books'][number];

/** Request: the edits that put a play of a section elsewhere in its book. A slot is the line of a section and a place in its list. */
export const arrangeMethod = 'setwright/arrange';
const slot = v.object({ line: count, index: count });
const arrangeSchema = v.object({ version, uri: v.string(), from: slot, to: slot });
const arrangedSchema = v.nullable(v.object({ edits: v.array(v.object({ range, newText: v.string() })) }));
export type Slot = v.InferOutput<typeof slot>;

/** Request: what a new play can start from, for the document it will stand in. */
export const choicesMethod = 'setwright/newPlayChoices';
const choicesQuestionSchema = v.object({ version, uri: v.optional(v.string()) });
const throwInFrom = v.picklist(['sideline', 'baseline']);
const choicesSchema = v.object({
  /** With `throwIn` it is the four on the floor who stand so, and 1 throws in from there. */
  alignments: v.array(v.object({ name: v.string(), places: v.string(), own: v.boolean(), throwIn: v.optional(throwInFrom) })),
  levels: v.array(v.string()),
  defences: v.array(v.string()),
  /** The document says whose legs its plays are for. */
  levelSaid: v.boolean(),
  /** Names of its plays. */
  taken: v.array(v.string()),
});
export type Choices = v.InferOutput<typeof choicesSchema>;

/** Request: the text of a new play, of a file with it, or of a whole playbook that holds it. */
export const newPlayMethod = 'setwright/newPlay';
const newPlaySchema = v.object({
  version,
  uri: v.optional(v.string()),
  as: v.picklist(['play', 'file', 'playbook']),
  name: v.string(),
  alignment: v.string(),
  throwIn: v.optional(throwInFrom),
  against: v.string(),
  level: v.optional(v.string()),
  team: v.optional(v.string()),
});
export type NewPlay = v.InferOutput<typeof newPlaySchema>;
/** What is asked of a coach, where a caller has answered some of it. */
const answersSchema = v.partial(v.omit(newPlaySchema, ['version', 'uri', 'as']));

function reading<const Schema extends v.GenericSchema>(schema: Schema) {
  return (value: unknown): v.InferOutput<Schema> | undefined => {
    const read = v.safeParse(schema, value);
    return read.success ? read.output : undefined;
  };
}

export const readList = reading(listSchema);
export const readText = reading(textSchema);
export const readReadFile = reading(readFileSchema);
export const readPlaybookQuestion = reading(playbookQuestionSchema);
export const readPlaybook = reading(playbookSchema);
export const readArrange = reading(arrangeSchema);
export const readArranged = reading(arrangedSchema);
export const readChoicesQuestion = reading(choicesQuestionSchema);
export const readChoices = reading(choicesSchema);
export const readNewPlay = reading(newPlaySchema);
export const readAnswers = reading(answersSchema);
