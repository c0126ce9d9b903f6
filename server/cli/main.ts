// The command line, `setwright`.
import { version } from '../../package.json';

if (process.argv[2] === '--version') console.log(version);
else {
  console.error('setwright: no commands yet; only --version');
  process.exitCode = 2;
}
