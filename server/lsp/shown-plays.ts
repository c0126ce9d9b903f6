// The plays that panels show: one frame a panel at every change of the text, from the newest text only. Driven by the
// keystroke: neither the checks nor their settling come before it.
//
// While a line is unfinished the picture is the one that was meant last: `4 cuts` on the way to `4 cuts to left wing` is a cut to the rim, shown for
// as long as it stands there, and gone with the next letter. What was meant is what stood before he began with the line, or has stood for a while.
import { blockAtLine, blockOfKey, firstLineOf, type Block, type BookFile } from '../../language/book/book.ts';
import { changeBetween, noChange } from '../../language/playback/change.ts';
import type { Playback } from '../../language/playback/playback.ts';
import type { BlockKey } from '../../language/play/play.ts';
import type { OpenDocument } from './documents.ts';
import type { Host } from './host.ts';
import { openMailbox } from './mailbox.ts';
import { PROTOCOL_VERSION, type Frame, type Show } from './protocol.ts';

export interface ShownPlays {
  readonly show: (wanted: Show) => void;
  readonly hide: (panel: string) => void;
  /** The document has changed. `typed` is the line of the last edit, which a following panel goes after; absent when it was opened. */
  readonly changed: (uri: string, typed?: number) => void;
  /** The coach has gone away from the line he was typing: the play is shown as the text now stands. */
  readonly left: (uri: string) => void;
  readonly closed: (uri: string) => void;
}

export interface PlaySource {
  readonly document: (uri: string) => OpenDocument | undefined;
  readonly playbackOf: (uri: string, key: BlockKey) => Playback | undefined;
}

/** Milliseconds after which a line that can be read is one that was meant, and no step on the way to another. */
const standsFor = 1000;

interface Panel {
  readonly uri: string;
  readonly what: Show['what'];
  readonly seq: number;
  /** It takes changes of what it has. */
  readonly changes: boolean;
  /** The picture it has, and the frame that brought it. */
  readonly sent?: { readonly seq: number; readonly playback: Playback; readonly at: number };
  /** The picture of what was meant last. */
  readonly meant?: Playback | undefined;
  /** What it showed last: where to look for a play that has lost its name, and what stays while a line is unfinished. */
  readonly last?: { readonly key: BlockKey; readonly title: string; readonly firstLine: number };
  /** The line being typed. */
  readonly typed?: number;
  /** That line cannot be read, so the picture shown is an older one. */
  readonly stale?: boolean;
}

export function showPlays(host: Pick<Host, 'turn'>, source: PlaySource, send: (frame: Frame) => void, now = () => performance.now()): ShownPlays {
  const panels = new Map<string, Panel>();
  const due = new Set<string>();
  const mailbox = openMailbox(host, () => {
    const now = [...due];
    due.clear();
    now.forEach(sendFrame);
  });

  function sendFrame(id: string) {
    const panel = panels.get(id);
    const document = panel && source.document(panel.uri);
    if (panel === undefined || document === undefined) return;
    const found = playFor(document.file, panel);
    const seq = panel.seq + 1;
    const common = { version: PROTOCOL_VERSION, panel: id, uri: panel.uri, documentVersion: document.version, seq } as const;
    if (found === undefined) {
      panels.set(id, { ...panel, seq, last: undefined, sent: undefined, meant: undefined, stale: false });
      return send({ ...common, playKey: null, title: '', firstLine: 0, playback: null, stale: false });
    }
    const { block, firstLine } = found;
    const typed = panel.typed === undefined ? undefined : panel.typed - firstLine;
    const unfinished = typed !== undefined && block.lines[typed]?.parsed.fault !== undefined;
    const last = panel.last !== undefined && (panel.last.key === block.key || panel.last.firstLine === firstLine) ? panel.last : undefined;
    if (unfinished && last !== undefined) {
      const meant = panel.meant !== undefined && panel.meant !== panel.sent?.playback && panel.meant.play.key === last.key ? panel.meant : undefined;
      panels.set(id, { ...panel, seq, stale: true, ...(meant !== undefined && { sent: { seq, playback: meant, at: now() } }) });
      return send({ ...common, playKey: last.key, title: last.title, firstLine, ...(meant === undefined ? { playback: null } : pictureFor(panel, meant)), stale: true, staleLine: panel.typed });
    }
    const playback = source.playbackOf(panel.uri, block.key) ?? null;
    const title = playback?.play.name ?? block.name ?? '';
    const sent = playback === null ? undefined : { seq, playback, at: now() };
    const isBlank = typed !== undefined && block.lines[typed]?.parsed.tree === undefined;
    panels.set(id, { ...panel, seq, stale: false, sent, meant: isBlank ? sent?.playback : panel.meant, last: playback === null ? last : { key: block.key, title, firstLine } });
    send({ ...common, playKey: block.key, title, firstLine, ...pictureFor(panel, playback), stale: unfinished, ...(unfinished && { staleLine: panel.typed }) });
  }

  const post = (id: string) => {
    due.add(id);
    mailbox.post();
  };

  return {
    show({ panel: id, uri, what, changes = false }) {
      const before = panels.get(id);
      if (before === undefined || before.uri !== uri) {
        panels.set(id, { uri, what, changes, seq: before?.seq ?? 0 });
        return post(id);
      }
      // A line he has left unfinished is no longer being typed: the play is shown without it.
      const left = before.stale === true && what.kind === 'follow' && what.line !== before.typed;
      const panel = left ? { ...before, what, typed: undefined } : { ...before, what };
      panels.set(id, panel);
      const document = source.document(uri);
      const wanted = document && playFor(document.file, panel);
      if (left || wanted?.block.key !== before.last?.key) post(id);
    },
    hide(id) {
      panels.delete(id);
      due.delete(id);
    },
    changed(uri, typed) {
      for (const [id, panel] of panels) {
        if (panel.uri !== uri) continue;
        const what = panel.what.kind === 'follow' && typed !== undefined ? { kind: 'follow' as const, line: typed } : panel.what;
        const { sent, stale } = panel;
        const meant = sent !== undefined && stale !== true && typed !== undefined && (typed !== panel.typed || now() - sent.at >= standsFor) ? sent.playback : panel.meant;
        panels.set(id, { ...panel, what, meant, ...(typed !== undefined && { typed }) });
        post(id);
      }
    },
    left(uri) {
      for (const [id, panel] of panels) {
        if (panel.uri !== uri) continue;
        panels.set(id, { ...panel, typed: undefined });
        post(id);
      }
    },
    closed(uri) {
      for (const [id, panel] of panels) if (panel.uri === uri) due.delete(id);
    },
  };
}

/** After most keys little of a play is another: what has changed is a fraction of the whole, and is on its way sooner. */
function pictureFor({ changes, sent }: Panel, playback: Playback | null): Pick<Frame, 'playback' | 'change'> {
  if (!changes || playback === null || sent?.playback.play.key !== playback.play.key) return { playback };
  return { playback: null, change: { from: sent.seq, to: changeBetween(sent.playback, playback) ?? noChange } };
}

interface FoundPlay {
  readonly block: Block;
  readonly firstLine: number;
}

/** The play a panel shows now; between plays the one it showed before, else the first of the file. */
function playFor(file: BookFile, { what, last }: Panel): FoundPlay | undefined {
  if (what.kind === 'pin') return ofKey(file, what.playKey) ?? (last && atLine(file, last.firstLine)) ?? firstPlay(file);
  return atLine(file, what.line) ?? (last && ofKey(file, last.key)) ?? firstPlay(file);
}

function atLine(file: BookFile, line: number): FoundPlay | undefined {
  const found = blockAtLine(file, line);
  return found.block.kind === 'play' ? found : undefined;
}

function ofKey(file: BookFile, key: BlockKey): FoundPlay | undefined {
  const block = blockOfKey(file, key);
  const firstLine = firstLineOf(file, key);
  return block?.kind === 'play' && firstLine !== undefined ? { block, firstLine } : undefined;
}

function firstPlay(file: BookFile): FoundPlay | undefined {
  const block = file.blocks.find(({ kind }) => kind === 'play');
  return block && ofKey(file, block.key);
}
