// What every group of features needs: the documents, what is known of them, and a way to answer a request.
import type { CancellationToken, ClientCapabilities, Connection } from 'vscode-languageserver';
import type { Compiled } from '../../language/compile.ts';
import type { FileFinding, Keeper } from '../../language/keeper.ts';
import type { BeingWritten } from './being-written.ts';
import type { Documents, OpenDocument } from './documents.ts';
import type { Host } from './host.ts';
import type { Say } from '../../language/message/message.ts';
import type { Options } from './settings.ts';
import type { TypingFirst } from './typing-first.ts';

export interface Asking {
  readonly connection: Connection;
  readonly host: Host;
  readonly documents: Documents;
  readonly keeper: Keeper;
  readonly written: BeingWritten;
  /** As they are now. */
  readonly options: () => Options;
  readonly client: () => ClientCapabilities;
  /** In the editor's language. */
  readonly say: Say;
  readonly findingsOf: (uri: string, from?: number, to?: number) => readonly FileFinding[];
  readonly compileKey: (document: OpenDocument, key: string) => Compiled | undefined;
  /** The play that a line stands in. */
  readonly compileAt: (document: OpenDocument, line: number) => Compiled | undefined;
  /** Answers from an open document, null from any other; never once the editor has called the request off. */
  readonly answer: <Answer>(token: CancellationToken, uri: string, work: (document: OpenDocument) => Answer) => Promise<Answer | null>;
  /** The same, sooner: for what a coach waits for while he types. */
  readonly answerTyping: Asking['answer'];
  /** Work that comes behind such answers: so many turns later, and once they are written. */
  readonly behindTyping: TypingFirst['behind'];
  /** The same for a request that is of no one document. */
  readonly answerAll: <Answer>(token: CancellationToken, work: () => Answer) => Promise<Answer>;
  /** Reads the plays of the workspace that nobody has open: for what is asked of them all. It ends, also where they do not come. */
  readonly withAllFiles: () => Promise<void>;
}
