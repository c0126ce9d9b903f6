// The player: the same code in the page and in the editor's panel.
import './player.css';

const empty = document.createElement('p');
empty.textContent = 'No play to show yet.';
document.body.append(empty);
