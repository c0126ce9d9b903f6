// The least an extension can do between a key and a picture: told that the text has changed, it tells a panel, which draws at its next
// frame. No server, no reading, nothing to draw but a number. What this takes is VS Code's own, and nothing in it can be quicker.
const { commands, ViewColumn, window, workspace } = require('vscode');

const page = `<!doctype html>
<html>
<head><meta charset="utf-8"><title>Echo</title></head>
<body>
<h1>0</h1>
<script>
  addEventListener('message', ({ data }) =>
    requestAnimationFrame(() => {
      document.querySelector('h1').textContent = data.seq;
      document.documentElement.dataset.seq = data.seq;
    }));
  document.documentElement.dataset.seq = 0;
</script>
</body>
</html>`;

exports.activate = ({ subscriptions }) => {
  subscriptions.push(
    commands.registerCommand('echo.open', () => {
      const panel = window.createWebviewPanel('echo', 'Echo', { viewColumn: ViewColumn.Beside, preserveFocus: true }, { enableScripts: true });
      panel.webview.html = page;
      let seq = 0;
      const changes = workspace.onDidChangeTextDocument(({ contentChanges }) => contentChanges.length > 0 && void panel.webview.postMessage({ seq: ++seq }));
      panel.onDidDispose(() => changes.dispose());
    }),
  );
};
