import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';

/**
 * The release script in small repositories of its own, with an npm that writes down what it is asked and publishes nothing, and
 * gates that do as they are told.
 */

const ROOT = resolve(dirname(fileURLToPath(import.meta.url)), '../..');
const folders: string[] = [];
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

const READY = `# Changelog\n\n## [Unreleased]\n\n## [1.2.3] - 2026-01-02\n\n### Added\n\n- Something.\n`;
const TOKEN = { ACTIONS_ID_TOKEN_REQUEST_URL: 'https://127.0.0.1/', ACTIONS_ID_TOKEN_REQUEST_TOKEN: 'none' };

/** What may be different from a release that is ready; npm answers `view` with `registry` and the status `registryStatus`. */
interface Setting {
  readonly manifest?: { readonly version?: string; readonly [field: string]: unknown };
  readonly locked?: string;
  readonly changelog?: string;
  readonly tag?: 'here' | 'before' | 'none';
  readonly litter?: boolean;
  readonly gates?: string;
  readonly registry?: string;
  readonly registryStatus?: number;
  readonly env?: Readonly<Record<string, string>>;
}

interface Outcome {
  readonly status: number | null;
  readonly said: string;
  /** The commands that npm was given. */
  readonly npm: readonly string[];
}

function release(args: readonly string[], setting: Setting = {}): Outcome {
  const folder = mkdtempSync(join(tmpdir(), 'elbowroom-release-'));
  folders.push(folder);
  const [repository, bin] = [join(folder, 'repository'), join(folder, 'bin')];
  mkdirSync(join(repository, '.ci'), { recursive: true });
  mkdirSync(bin);
  const put = (path: string, text: string, mode = 0o644) => {
    writeFileSync(join(folder, path), text);
    chmodSync(join(folder, path), mode);
  };
  const {
    registry = 'npm error code E404',
    registryStatus = 1,
    gates = 'echo "7 passed, 0 failed"',
  } = setting;
  put(
    'bin/npm',
    `#!/bin/sh\necho "$*" >> '${folder}/asked'\n[ "$1" != view ] || { echo '${registry}'; exit ${registryStatus}; }\n`,
    0o755,
  );
  const manifest: { readonly version: string } & Readonly<Record<string, unknown>> = {
    name: 'a-package',
    version: '1.2.3',
    repository: 'here',
    ...setting.manifest,
  };
  const locked = setting.locked ?? '1.2.3';
  put('repository/package.json', JSON.stringify(manifest));
  put(
    'repository/package-lock.json',
    JSON.stringify({ version: locked, packages: { '': { version: locked } } }),
  );
  put('repository/CHANGELOG.md', setting.changelog ?? READY);
  put('repository/.ci/run', `#!/bin/sh\necho ran >> '${folder}/gates'\n${gates}\n`, 0o755);
  copyFileSync(join(ROOT, '.ci/release'), join(repository, '.ci/release'));
  git(repository, 'init', '--quiet');
  const commit = () => {
    git(repository, 'add', '.');
    git(repository, 'commit', '--quiet', '--allow-empty', '-m', 'All of it');
  };
  commit();
  if (setting.tag !== 'none') git(repository, 'tag', `v${manifest.version}`);
  if (setting.tag === 'before') commit();
  if (setting.litter === true) put('repository/litter.txt', 'left over');
  const { status, stdout, stderr } = spawnSync('bash', ['.ci/release', ...args], {
    cwd: repository,
    encoding: 'utf8',
    env: { PATH: `${bin}:${process.env.PATH ?? ''}`, ...setting.env },
    timeout: 60_000,
  });
  const asked = join(folder, 'asked');
  const npm = existsSync(asked) ? readFileSync(asked, 'utf8').trim().split('\n') : [];
  return { status, said: stdout + stderr, npm };
}

function git(cwd: string, ...args: string[]): void {
  const as = ['-c', 'user.name=Nobody', '-c', 'user.email=nobody@localhost', '-c', 'commit.gpgsign=false'];
  const { status, stderr } = spawnSync('git', [...as, ...args], { cwd, encoding: 'utf8' });
  if (status !== 0) throw new Error(`git ${args.join(' ')}: ${stderr}`);
}

describe('the release script', () => {
  it('tries without sending anything', () => {
    const { status, said, npm } = release([]);
    expect(status).toBe(0);
    expect(npm).toEqual(['publish --provenance --access public --tag latest --dry-run']);
    expect(said).toContain('7 passed, 0 failed');
    expect(said).toContain('nothing was published');
  });

  it('publishes with provenance when it is told to, in a job with an identity token', () => {
    const { status, npm } = release(['--publish'], { env: TOKEN });
    expect(status).toBe(0);
    expect(npm).toEqual([
      'view a-package@1.2.3 version',
      'publish --provenance --access public --tag latest',
    ]);
    expect(release(['--publish'], { env: { SIGSTORE_ID_TOKEN: 'none' } }).status).toBe(0);
  });

  it('keeps a pre-release from those who ask for no version', () => {
    const version = '1.2.3-rc.1';
    const changelog = READY.replace('1.2.3', version);
    const { status, npm } = release([], { manifest: { version }, locked: version, changelog });
    expect(status).toBe(0);
    expect(npm).toEqual(['publish --provenance --access public --tag next --dry-run']);
  });

  const refusals: readonly (readonly [string, Setting])[] = [
    ['the tree is not clean', { litter: true }],
    ["'one' is no version", { manifest: { version: 'one' } }],
    ['package-lock.json has 1.2.2 1.2.2', { locked: '1.2.2' }],
    ['there is no tag v1.2.3', { tag: 'none' }],
    ['the tag v1.2.3 is on another commit', { tag: 'before' }],
    ['CHANGELOG.md has no section 1.2.3', { changelog: READY.replace('1.2.3', '1.2.2') }],
    ['CHANGELOG.md has no section 1.2.3', { changelog: READY.replace(' - 2026-01-02', '') }],
    [
      'CHANGELOG.md has entries under Unreleased',
      { changelog: READY.replace('[Unreleased]\n', '[Unreleased]\n\n- Late.\n') },
    ],
    ['package.json is private', { manifest: { private: true } }],
    ['the CI fails: 6 passed, 1 failed', { gates: 'echo "6 passed, 1 failed"; exit 1' }],
    ['the CI changed the tree', { gates: 'echo new > new.txt; echo "7 passed, 0 failed"' }],
  ];
  it.each(refusals)('refuses even to try: %s (%#)', (why, setting) => {
    const { status, said, npm } = release([], setting);
    expect(status).toBe(1);
    expect(said).toContain(why);
    expect(npm).toEqual([]);
  });

  const blocked: readonly (readonly [string, Setting])[] = [
    ['no identity token', { env: {} }],
    ['package.json names no repository', { manifest: { repository: undefined } }],
    ['1.2.3 is published already', { registry: '1.2.3', registryStatus: 0 }],
    ['the registry does not answer', { registry: 'npm error code ENOTFOUND', registryStatus: 1 }],
  ];
  it.each(blocked)('refuses to publish: %s', (why, setting) => {
    const { status, said, npm } = release(['--publish'], { env: TOKEN, ...setting });
    expect(status).toBe(1);
    expect(said).toContain(why);
    expect(npm.filter((command) => command.startsWith('publish'))).toEqual([]);
  });

  it('says in a trial what would be in the way of publishing', () => {
    const { status, said } = release([], { manifest: { repository: undefined } });
    expect(status).toBe(0);
    expect(said).toContain('later package.json names no repository');
    expect(said).toContain('later no identity token');
  });

  it('does nothing when it is not understood', () => {
    for (const args of [['--dry-run'], ['--publish', 'now'], ['publish']]) {
      const { status, said, npm } = release(args);
      expect(status).toBe(2);
      expect(said).toContain('usage:');
      expect(npm).toEqual([]);
    }
  });
});
