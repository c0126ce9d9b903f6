// How the extension speaks with its language server: what is said or asked before the server runs waits for it.
import type { Disposable } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { PROTOCOL_VERSION } from '../server/lsp/protocol.ts';

/** What the server answers or says is unknown until `read` has read it. */
export interface ServerLine {
  /** `undefined`: no answer, or one that could not be read. */
  readonly ask: <Answer>(method: string, question: object, read: (value: unknown) => Answer | undefined) => Promise<Answer | undefined>;
  readonly say: (method: string, what: object) => void;
  readonly hear: (method: string, hear: (value: unknown) => void) => Disposable;
  /** The server answers from then on. */
  readonly running: Promise<BaseLanguageClient>;
}

/** Starts the server once its client is there. */
export function openServerLine(client: Promise<BaseLanguageClient>): ServerLine {
  const running = client.then(async (one) => {
    await one.start();
    return one;
  });
  const versioned = (what: object) => ({ version: PROTOCOL_VERSION, ...what });
  return {
    ask: (method, question, read) => running.then((one) => one.sendRequest<unknown>(method, versioned(question))).then(read, () => undefined),
    say: (method, what) => void running.then((one) => one.sendNotification(method, versioned(what))),
    // Nothing is heard before the turn in which the server is started has ended.
    hear: (method, hear) => {
      const hearing = client.then((one) => one.onNotification(method, hear));
      return { dispose: () => void hearing.then((one) => one.dispose()) };
    },
    running,
  };
}
