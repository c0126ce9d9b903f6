import { LSPErrorCodes, ResponseError, type CancellationToken } from 'vscode-languageserver';
import { soon, type Host } from './host.ts';

// A request and its cancellation often arrive one right behind the other; a millisecond lets the second be read before the
// work for the first begins.
const aMillisecond = (host: Pick<Host, 'later'>) => new Promise<void>((resolve) => void host.later(0, resolve));

/** Only what has arrived already is read first: for what a coach waits for while he types, before the check of the same text begins. */
export const whatIsHere = (host: Pick<Host, 'turn'>) => new Promise<void>((resolve) => void soon(host, resolve));

/**
 * Does the work of a request, unless the editor no longer wants it: then the answer is the error -32800 (request
 * cancelled) of the Language Server Protocol, as it asks for.
 */
export async function answerUnlessCancelled<Answer>(host: Pick<Host, 'later' | 'turn'>, token: CancellationToken, work: () => Answer | Promise<Answer>, letMessagesIn: (host: Pick<Host, 'later' | 'turn'>) => Promise<void> = aMillisecond): Promise<Answer> {
  await letMessagesIn(host);
  stopIfCancelled(token);
  const answer = await work();
  stopIfCancelled(token);
  return answer;
}

export const calledOff = (): ResponseError<void> => new ResponseError(LSPErrorCodes.RequestCancelled, 'The editor no longer asks for this.');

function stopIfCancelled(token: CancellationToken) {
  if (token.isCancellationRequested) throw calledOff();
}
