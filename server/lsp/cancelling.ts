import { LSPErrorCodes, ResponseError, type CancellationToken } from 'vscode-languageserver';

// A request and its cancellation often arrive in one chunk; a turn of the event loop lets the second be read before the
// work for the first begins.
const letMessagesIn = () => new Promise<void>((resolve) => setTimeout(resolve, 0));

/**
 * Does the work of a request, unless the editor no longer wants it: then the answer is the error -32800 (request
 * cancelled) of the Language Server Protocol, as it asks for.
 */
export async function answerUnlessCancelled<Answer>(token: CancellationToken, work: () => Answer | Promise<Answer>): Promise<Answer> {
  await letMessagesIn();
  stopIfCancelled(token);
  const answer = await work();
  stopIfCancelled(token);
  return answer;
}

function stopIfCancelled(token: CancellationToken) {
  if (token.isCancellationRequested) throw new ResponseError(LSPErrorCodes.RequestCancelled, 'The editor no longer asks for this.');
}
