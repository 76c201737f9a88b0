import { CHECKSUM_COMMANDS, VERIFY_COMMANDS } from '../file-checks.ts';
import { FILE_NAMES } from '../file-names.ts';
import { frameFilterEnd } from '../frame-filter.ts';
import { FIRST_KEPT_SECONDS, type RecordingQuestions } from './recording-questions.ts';
import type { ReelScriptEntries } from './script-entries.ts';
import { comment, type ShellWriter } from './script-outline.ts';
import type { ScriptStep } from './script-steps.ts';
import { SAME_RATE_SHARE, TROUBLE, type ExpectedColour } from './script-words.ts';
import { commentText, posixQuoted } from './shell-quoting.ts';

/** Words that no shell reads anything into. */
const PLAIN = /^[\w%+=:,./-]+$/u;
/** Words that are the same between double quotes, where single ones would have to be escaped. */
const SAME_IN_DOUBLE_QUOTES = /^[^"$`\\!]*$/u;

/** A word of a command; names that a reader may choose stand in variables. */
function posixWord(word: string): string {
  if (word === FILE_NAMES.recording) return '"file:$recording"';
  if (word === FILE_NAMES.taken) return '"file:$taken"';
  if (word === FIRST_KEPT_SECONDS) return '"$begin"';
  if (PLAIN.test(word)) return word;
  return SAME_IN_DOUBLE_QUOTES.test(word) ? `"${word}"` : posixQuoted(word);
}

const posixCommand = (words: readonly string[]): string => words.map(posixWord).join(' ');

const stop = (sentence: string, more = ''): string => `stop ${posixQuoted(sentence)}${more}`;

function settings({ reelName, recordingName, sound }: ReelScriptEntries): readonly string[] {
  return [
    'set -u',
    'LC_ALL=C; export LC_ALL',
    `reel=${posixQuoted(commentText(reelName))}`,
    `what=\${1:-all}`,
    `recording=${posixQuoted(recordingName)}`,
    'if [ "$#" -ge 2 ]; then recording=$2; fi',
    ...(sound === undefined
      ? []
      : [`taken=${posixQuoted(sound.fileName)}`, 'if [ "$#" -ge 3 ]; then taken=$3; fi']),
  ];
}

const FUNCTIONS = `
# Says a line on the screen and, once the work has begun, writes it into the log.
log=''
note() { if [ -n "$log" ]; then printf '%s  %s\\n' "$(date -u '+%Y-%m-%d %H:%M:%S UTC')" "$1" >> "$log"; fi; }
say() { printf '%s\\n' "$1"; note "$1"; }
stop() {
  say "STOPPED: $*"
  say 'What was finished before is left as it is.'
  exit 1
}
step() { trouble=$2; say "$1"; }
# Runs a command that makes a file. The file gets its name when it is complete.
make() {
  result=$1; shift
  note "Command: $* $result"
  rm -f "unfinished-$result"
  if "$@" "unfinished-$result" && [ -s "unfinished-$result" ] && [ ! -e "$result" ] && mv "unfinished-$result" "$result"
  then say "  made: $result"
  else rm -f "unfinished-$result"; stop "$trouble"
  fi
}
# Whether two rates, such as 30000/1001 and 29.97, are the same.
same_rate() {
  awk -v a="$1" -v b="$2" 'function rate(text, part, n) { n = split(text, part, "/"); return n < 2 ? part[1] + 0 : part[2] + 0 == 0 ? 0 : part[1] / part[2] }
    BEGIN { x = rate(a); y = rate(b); d = x < y ? y - x : x - y; exit !(y > 0 && d <= y * ${SAME_RATE_SHARE}) }'
}
# Whether two numbers of seconds differ by no more than a third.
near() { awk -v a="$1" -v b="$2" -v by="$3" 'BEGIN { d = a - b; if (d < 0) d = -d; exit !(a ~ /^[0-9]/ && d <= by + 0) }'; }
fact() { printf '%s\\n' "$facts" | tr -d '\\r' | sed -n "s/^$1=//p" | head -n 1; }`
  .trimStart()
  .split('\n');

/** Whether the list beside the recording is the one that these numbers are of, and between which frames. */
function listChecks({
  keep,
  nativeFps,
  recorded,
  cameraFps,
}: ReelScriptEntries): readonly string[] {
  if (keep.by !== 'file') return [];
  const list = FILE_NAMES.keepFilter;
  return [
    ...comment(['Is the measured keep list the one of this reel?']),
    `[ -f ${list} ] || ${stop(TROUBLE.noList, ` ${list}`)}`,
    `kept=$(tr 'e' '\\n' < ${list} | sed -n 's/^q(n,\\([0-9][0-9]*\\)).*/\\1/p')`,
    `count=$(printf '%s\\n' "$kept" | grep -c .)`,
    `[ "$count" -eq ${keep.filmFrames} ] || ${stop(TROUBLE.otherCount, ` "${keep.filmFrames}, $count"`)}`,
    `case "$(tr -d '\\r' < ${list})" in *${posixQuoted(frameFilterEnd(nativeFps, recorded))}) ;; *) ${stop(TROUBLE.otherMaking, ` ${list}`)} ;; esac`,
    `first=$(printf '%s\\n' "$kept" | head -n 1)`,
    `last=$(printf '%s\\n' "$kept" | tail -n 1)`,
    `begin=$(awk -v frame="$first" 'BEGIN { printf "%.3f", frame / ${cameraFps.valueOf()} }')`,
  ];
}

function firstChecks(results: readonly string[], entries: ReelScriptEntries): readonly string[] {
  const hasSound = entries.sound !== undefined;
  return [
    `[ -n "$(command -v ffmpeg)" ] && [ -n "$(command -v ffprobe)" ] || ${stop(TROUBLE.noTools)}`,
    `case "$what" in try | all) ;; *) ${stop(TROUBLE.noSuchWork, ' "$what"')} ;; esac`,
    `[ -f "$recording" ] || ${stop(TROUBLE.noRecording, ' "$recording"')}`,
    ...(hasSound ? [`[ -f "$taken" ] || ${stop(TROUBLE.noSound, ' "$taken"')}`] : []),
    ...listChecks(entries),
    `for result in ${results.join(' ')}; do`,
    `  [ ! -e "$result" ] || ${stop(TROUBLE.inTheWay, ` "$result." ${posixQuoted(TROUBLE.clearFirst)}`)}`,
    'done',
    `log=${FILE_NAMES.log}`,
    'note "---- $reel"',
    'version=$(ffmpeg -hide_banner -version | head -n 1)',
    'note "$version"',
  ];
}

function colourChecks({ ranges, matrices }: ExpectedColour): readonly string[] {
  const otherwise = stop(TROUBLE.otherRange, ' "$(fact color_range), $(fact color_space)"');
  const either = (values: readonly string[]): string => values.join(' | ');
  return [
    `case "$(fact color_range)" in ${either(ranges)}) ;; *) ${otherwise} ;; esac`,
    'allowed' in matrices
      ? `case "$(fact color_space)" in ${either(matrices.allowed)}) ;; *) ${otherwise} ;; esac`
      : `case "$(fact color_space)" in ${either(matrices.refused)}) ${otherwise} ;; esac`,
  ];
}

function describe(asked: RecordingQuestions): readonly string[] {
  return [
    `facts=$(${posixCommand(asked.describe)}) || ${stop(TROUBLE.unreadable)}`,
    "note \"$(printf '%s' \"$facts\" | tr -d '\\r' | tr '\\n' ' ')\"",
    `case "$(fact field_order)" in progressive | unknown) ;; *) ${stop(TROUBLE.fields)} ;; esac`,
    'for rate in "$(fact r_frame_rate)" "$(fact avg_frame_rate)"; do',
    `  same_rate "$rate" ${asked.cameraRate} || ${stop(TROUBLE.otherRate, ' "$rate"')}`,
    'done',
    ...colourChecks(asked.colour),
  ];
}

function countPictures(asked: RecordingQuestions): readonly string[] {
  return [
    `pictures=$(${posixCommand(asked.count)} | tr -dc '0-9') || ${stop(TROUBLE.unreadable)}`,
    'note "Pictures in the recording: $pictures"',
    `[ "\${pictures:-0}" -ge ${asked.fewestPictures ?? '$((last + 1))'} ] || ${stop(TROUBLE.tooShort, ' "$pictures"')}`,
  ];
}

function lookForFields(asked: RecordingQuestions): readonly string[] {
  return [
    `seen=$(${posixCommand(asked.detect)} 2>&1) || ${stop(TROUBLE.unreadable)}`,
    `fields=$(printf '%s\\n' "$seen" | sed -n 's/.*Multi frame detection: TFF: *\\([0-9]*\\) BFF: *\\([0-9]*\\) Progressive: *\\([0-9]*\\).*/\\1 \\2 \\3/p' | tail -n 1)`,
    `uneven=$(printf '%s\\n' "$seen" | sed -n 's/.*VFR:\\([0-9.]*\\).*/\\1/p' | tail -n 1)`,
    `[ -n "$fields" ] && [ -n "$uneven" ] || ${stop(TROUBLE.notLooked)}`,
    'note "Fields, upper first, lower first, none: $fields. Uneven share: $uneven"',
    `printf '%s\\n' "$fields" | awk '{ exit !($1 + $2 <= $3) }' || ${stop(TROUBLE.fields)}`,
    `case "$recording" in *.mkv) ;; *) near "$uneven" 0 0 || ${stop(TROUBLE.uneven)} ;; esac`,
  ];
}

function sampleRate(asked: RecordingQuestions, sampleRateHz: number): readonly string[] {
  return [
    `hertz=$(${posixCommand(asked.sampleRate)} | tr -dc '0-9') || ${stop(TROUBLE.badSound)}`,
    `[ "$hertz" = ${sampleRateHz} ] || ${stop(TROUBLE.otherSampleRate, ' "$hertz"')}`,
  ];
}

function drawLook(asked: RecordingQuestions): readonly string[] {
  return [
    `${posixCommand(asked.look)} ${FILE_NAMES.look} || ${stop(TROUBLE.noLook)}`,
    `say '  drawn anew, to look at: ${FILE_NAMES.look}'`,
    'if [ "$what" = try ]; then say \'Tried, and nothing else was made.\'; exit 0; fi',
  ];
}

function workLines({ work }: ScriptStep, asked: RecordingQuestions): readonly string[] {
  switch (work.kind) {
    case 'make': {
      const make = (words: readonly string[]) => `make ${work.result} ${posixCommand(words)}`;
      if (work.olderWords === undefined) return [make(work.words)];
      return [
        ...comment(['The name of one switch changed with version 7 of the program.']),
        `major=$(printf '%s\\n' "$version" | sed -n 's/.*version n\\{0,1\\}\\([0-9][0-9]*\\)\\..*/\\1/p')`,
        `if [ "\${major:-7}" -ge 7 ]`,
        `then ${make(work.words)}`,
        `else ${make(work.olderWords)}`,
        'fi',
      ];
    }
    case 'write':
      return [
        `cat > ${work.result} <<'END_OF_LIST' || stop "$trouble"`,
        work.text.trimEnd(),
        'END_OF_LIST',
      ];
    case 'count-pictures':
      return [
        `there=$(grep -c '^0,' ${FILE_NAMES.pictureChecksums})`,
        `[ "$there" -eq ${work.filmFrames} ] || ${stop(TROUBLE.wrongCount, ` "${work.filmFrames}, $there"`)}`,
        `say "  all there: $there"`,
      ];
    case 'read-master':
      return [
        `said=$(${posixCommand(asked.readMaster)} 2>&1) || stop "$trouble"`,
        `[ -z "$said" ] || ${stop(TROUBLE.damaged, ' "$said"')}`,
      ];
    case 'measure-viewing':
      return [
        `lasts=$(${posixCommand(asked.viewingSeconds)} | tr -d '\\r') || stop "$trouble"`,
        `near "$lasts" ${work.seconds.toFixed(6)} ${work.bySeconds.toFixed(6)} || ${stop(TROUBLE.wrongLength, ` "${work.seconds.toFixed(3)}, $lasts"`)}`,
        `say "  lasts: $lasts s"`,
      ];
    case 'remove':
      return [`rm -f ${work.files.join(' ')} || stop "$trouble"`];
  }
}

const CHECKSUMS = [
  'if [ -n "$(command -v sha256sum)" ]; then',
  `  ${CHECKSUM_COMMANDS.linux} || ${stop(TROUBLE.noChecksums)}`,
  `  ${VERIFY_COMMANDS.linux} || ${stop(TROUBLE.badChecksums)}`,
  'else',
  `  ${CHECKSUM_COMMANDS.macos} || ${stop(TROUBLE.noChecksums)}`,
  `  ${VERIFY_COMMANDS.macos} || ${stop(TROUBLE.badChecksums)}`,
  'fi',
];

/** The chain of one reel in the words of a POSIX shell. */
export const POSIX_WRITER: ShellWriter = {
  firstLines: ['#!/bin/sh'],
  call: `sh ${FILE_NAMES.posixScript}`,
  preparation: [],
  settings,
  functions: FUNCTIONS,
  say: (sentence) => `say ${posixQuoted(sentence)}`,
  firstChecks,
  describe,
  countPictures,
  lookForFields,
  sampleRate,
  drawLook,
  beginStep: ({ title, trouble }) => `step ${posixQuoted(title)} ${posixQuoted(trouble)}`,
  work: workLines,
  endLog: `log=''`,
  checksums: CHECKSUMS,
};
