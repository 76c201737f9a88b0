import { CHECKSUM_COMMANDS, VERIFY_COMMANDS } from '../file-checks.ts';
import { FILE_NAMES } from '../file-names.ts';
import { frameFilterEnd } from '../frame-filter.ts';
import { FIRST_KEPT_SECONDS, type RecordingQuestions } from './recording-questions.ts';
import type { ReelScriptEntries } from './script-entries.ts';
import { comment, type ShellWriter } from './script-outline.ts';
import type { ScriptStep } from './script-steps.ts';
import { SAME_RATE_SHARE, TROUBLE, type ExpectedColour } from './script-words.ts';
import { commentText, powershellQuoted } from './shell-quoting.ts';

/** A word of a command; names that a reader may choose stand in variables. */
function powershellWord(word: string): string {
  if (word === FILE_NAMES.recording) return '"file:$recording"';
  if (word === FILE_NAMES.taken) return '"file:$taken"';
  if (word === FIRST_KEPT_SECONDS) return '$begin';
  return powershellQuoted(word);
}

/** Words as a list, so that nothing in them is taken for a parameter or a number. */
const wordList = (words: readonly string[]): string => `@(${words.map(powershellWord).join(', ')})`;

const stop = (sentence: string, more = ''): string =>
  `Stop-Reel ${powershellQuoted(sentence)}${more === '' ? '' : ` ${more}`}`;

function settings({ reelName, recordingName, sound }: ReelScriptEntries): readonly string[] {
  return [
    'param(',
    `  [string]$what = 'all',`,
    `  [string]$recording = ${powershellQuoted(recordingName)}${sound === undefined ? '' : ','}`,
    ...(sound === undefined ? [] : [`  [string]$taken = ${powershellQuoted(sound.fileName)}`]),
    ')',
    `$reel = ${powershellQuoted(commentText(reelName))}`,
  ];
}

const FUNCTIONS = `
$ErrorActionPreference = 'Stop'
$PSNativeCommandUseErrorActionPreference = $false
# What goes wrong outside the programs stops the script with a sentence as well.
$script:trouble = ${powershellQuoted(TROUBLE.unforeseen)}
trap { Stop-Reel $script:trouble $_.Exception.Message }
$invariant = [Globalization.CultureInfo]::InvariantCulture
# Says a line on the screen and, once the work has begun, writes it into the log.
$script:log = ''
function Add-Note($line) {
  if ($script:log -ne '') {
    $time = [DateTime]::UtcNow.ToString('yyyy-MM-dd HH:mm:ss', $invariant)
    [IO.File]::AppendAllText((Get-Place $script:log), $time + ' UTC  ' + $line + [char]10)
  }
}
function Get-Place($name) { Join-Path (Get-Location).ProviderPath $name }
function Show-Line($line) { Write-Host $line; Add-Note $line }
function Stop-Reel($sentence, $more) {
  Show-Line (('STOPPED: ' + $sentence + ' ' + $more).TrimEnd())
  Show-Line 'What was finished before is left as it is.'
  exit 1
}
function Start-Step($title, $sentence) { $script:trouble = $sentence; Show-Line $title }
# Runs a command that makes a file. The file gets its name when it is complete.
function Invoke-Make($result, $words) {
  $ErrorActionPreference = 'Continue'
  Add-Note ('Command: ' + ($words -join ' ') + ' ' + $result)
  $unfinished = 'unfinished-' + $result
  if (Test-Path -LiteralPath $unfinished) { Remove-Item -LiteralPath $unfinished }
  $program = $words[0]
  $rest = @($words[1..($words.Count - 1)]) + $unfinished
  & $program $rest
  $works = $LASTEXITCODE -eq 0 -and (Test-Path -LiteralPath $unfinished) -and (Get-Item -LiteralPath $unfinished).Length -gt 0 -and -not (Test-Path -LiteralPath $result)
  if ($works) { Rename-Item -LiteralPath $unfinished -NewName $result }
  if (-not $works -or -not (Test-Path -LiteralPath $result)) {
    if (Test-Path -LiteralPath $unfinished) { Remove-Item -LiteralPath $unfinished }
    Stop-Reel $script:trouble
  }
  Show-Line ('  made: ' + $result)
}
# Asks a program, takes its answer, and stops with a sentence when it fails.
function Get-Answer($words, $sentence) {
  $ErrorActionPreference = 'Continue'
  $program = $words[0]
  $rest = @($words[1..($words.Count - 1)])
  $answer = @(& $program $rest)
  if ($LASTEXITCODE -ne 0) { Stop-Reel $sentence }
  $answer
}
# The same, but takes what the program says beside its answer as well: remarks and complaints.
function Get-Said($words, $sentence) {
  $ErrorActionPreference = 'Continue'
  $program = $words[0]
  $rest = @($words[1..($words.Count - 1)])
  $said = @(& $program $rest 2>&1 | ForEach-Object { [string]$_ })
  if ($LASTEXITCODE -ne 0) { Stop-Reel $sentence }
  $said
}
function Get-Rate($text) {
  $parts = ([string]$text).Split('/')
  $number = 0.0
  $below = 1.0
  [void][double]::TryParse($parts[0], [Globalization.NumberStyles]::Float, $invariant, [ref]$number)
  if ($parts.Count -gt 1) { [void][double]::TryParse($parts[1], [Globalization.NumberStyles]::Float, $invariant, [ref]$below) }
  if ($below -eq 0) { 0.0 } else { $number / $below }
}
# Whether two rates, such as 30000/1001 and 29.97, are the same.
function Test-SameRate($one, $other) {
  $wanted = Get-Rate $other
  [Math]::Abs((Get-Rate $one) - $wanted) -le $wanted * ${SAME_RATE_SHARE}
}
function Get-Fact($name) {
  foreach ($line in $facts) { if ($line.StartsWith($name + '=')) { return $line.Substring($name.Length + 1).Trim() } }
  ''
}`
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
  const list = powershellQuoted(FILE_NAMES.keepFilter);
  const end = powershellQuoted(frameFilterEnd(nativeFps, recorded));
  return [
    ...comment(['Is the measured keep list the one of this reel?']),
    `if (-not (Test-Path -LiteralPath ${list} -PathType Leaf)) { ${stop(TROUBLE.noList, list)} }`,
    `$filter = [IO.File]::ReadAllText((Get-Place ${list})).TrimEnd()`,
    `$kept = @([regex]::Matches($filter, 'eq\\(n,([0-9]+)\\)'))`,
    `if ($kept.Count -ne ${keep.filmFrames}) { ${stop(TROUBLE.otherCount, `('${keep.filmFrames}, ' + $kept.Count)`)} }`,
    `if (-not $filter.EndsWith(${end}, [StringComparison]::Ordinal)) { ${stop(TROUBLE.otherMaking, list)} }`,
    `$first = [long]$kept[0].Groups[1].Value`,
    `$last = [long]$kept[$kept.Count - 1].Groups[1].Value`,
    `$begin = ($first / ${cameraFps.valueOf()}).ToString('0.000', $invariant)`,
  ];
}

function firstChecks(results: readonly string[], entries: ReelScriptEntries): readonly string[] {
  const hasSound = entries.sound !== undefined;
  return [
    `foreach ($tool in 'ffmpeg', 'ffprobe') { if (-not (Get-Command $tool -CommandType Application -ErrorAction SilentlyContinue)) { ${stop(TROUBLE.noTools)} } }`,
    `if (@('try', 'all') -notcontains $what) { ${stop(TROUBLE.noSuchWork, '$what')} }`,
    `if (-not (Test-Path -LiteralPath $recording -PathType Leaf)) { ${stop(TROUBLE.noRecording, '$recording')} }`,
    ...(hasSound
      ? [
          `if (-not (Test-Path -LiteralPath $taken -PathType Leaf)) { ${stop(TROUBLE.noSound, '$taken')} }`,
        ]
      : []),
    ...listChecks(entries),
    `foreach ($result in ${results.map(powershellQuoted).join(', ')}) {`,
    `  if (Test-Path -LiteralPath $result) { ${stop(TROUBLE.inTheWay, `($result + '. ' + ${powershellQuoted(TROUBLE.clearFirst)})`)} }`,
    '}',
    `$script:log = ${powershellQuoted(FILE_NAMES.log)}`,
    `Add-Note ('---- ' + $reel)`,
    `$version = @(Get-Answer @('ffmpeg', '-hide_banner', '-version') ${powershellQuoted(TROUBLE.noTools)})[0]`,
    'Add-Note $version',
  ];
}

function colourChecks({ ranges, matrices }: ExpectedColour): readonly string[] {
  const otherwise = stop(
    TROUBLE.otherRange,
    `((Get-Fact 'color_range') + ', ' + (Get-Fact 'color_space'))`,
  );
  const list = (values: readonly string[]): string =>
    `@(${values.map(powershellQuoted).join(', ')})`;
  return [
    `if (${list(ranges)} -notcontains (Get-Fact 'color_range')) { ${otherwise} }`,
    'allowed' in matrices
      ? `if (${list(matrices.allowed)} -notcontains (Get-Fact 'color_space')) { ${otherwise} }`
      : `if (${list(matrices.refused)} -contains (Get-Fact 'color_space')) { ${otherwise} }`,
  ];
}

const UNREADABLE = powershellQuoted(TROUBLE.unreadable);

function describe(asked: RecordingQuestions): readonly string[] {
  return [
    `$facts = @(Get-Answer ${wordList(asked.describe)} ${UNREADABLE})`,
    `Add-Note ($facts -join ' ')`,
    `if (@('progressive', 'unknown') -notcontains (Get-Fact 'field_order')) { ${stop(TROUBLE.fields)} }`,
    `foreach ($rate in (Get-Fact 'r_frame_rate'), (Get-Fact 'avg_frame_rate')) {`,
    `  if (-not (Test-SameRate $rate ${powershellQuoted(asked.cameraRate)})) { ${stop(TROUBLE.otherRate, '$rate')} }`,
    '}',
    ...colourChecks(asked.colour),
  ];
}

function countPictures(asked: RecordingQuestions): readonly string[] {
  return [
    `$pictures = [long](((Get-Answer ${wordList(asked.count)} ${UNREADABLE}) -join ' ') -replace '[^0-9]', '')`,
    `Add-Note ('Pictures in the recording: ' + $pictures)`,
    `if ($pictures -lt ${asked.fewestPictures ?? '($last + 1)'}) { ${stop(TROUBLE.tooShort, '$pictures')} }`,
  ];
}

function lookForFields(asked: RecordingQuestions): readonly string[] {
  return [
    `$seen = (Get-Said ${wordList(asked.detect)} ${UNREADABLE}) -join [char]10`,
    `$fields = @([regex]::Matches($seen, 'Multi frame detection: TFF: *([0-9]+) BFF: *([0-9]+) Progressive: *([0-9]+)'))`,
    `$uneven = @([regex]::Matches($seen, 'VFR:([0-9.]+)'))`,
    `if ($fields.Count -eq 0 -or $uneven.Count -eq 0) { ${stop(TROUBLE.notLooked)} }`,
    '$found = $fields[$fields.Count - 1].Groups',
    '$share = Get-Rate ($uneven[$uneven.Count - 1].Groups[1].Value)',
    `Add-Note ('Fields, upper first, lower first, none: ' + $found[1].Value + ' ' + $found[2].Value + ' ' + $found[3].Value + '. Uneven share: ' + $share.ToString($invariant))`,
    `if ([long]$found[1].Value + [long]$found[2].Value -gt [long]$found[3].Value) { ${stop(TROUBLE.fields)} }`,
    `if (-not $recording.EndsWith('.mkv') -and $share -ne 0) { ${stop(TROUBLE.uneven)} }`,
  ];
}

function sampleRate(asked: RecordingQuestions, sampleRateHz: number): readonly string[] {
  return [
    `$hertz = ((Get-Answer ${wordList(asked.sampleRate)} ${powershellQuoted(TROUBLE.badSound)}) -join ' ') -replace '[^0-9]', ''`,
    `if ($hertz -ne '${sampleRateHz}') { ${stop(TROUBLE.otherSampleRate, '$hertz')} }`,
  ];
}

function drawLook(asked: RecordingQuestions): readonly string[] {
  return [
    `[void](Get-Answer ${wordList([...asked.look, FILE_NAMES.look])} ${powershellQuoted(TROUBLE.noLook)})`,
    `Show-Line '  drawn anew, to look at: ${FILE_NAMES.look}'`,
    `if ($what -eq 'try') { Show-Line 'Tried, and nothing else was made.'; exit 0 }`,
  ];
}

function workLines({ work }: ScriptStep, asked: RecordingQuestions): readonly string[] {
  switch (work.kind) {
    case 'make': {
      const make = (words: readonly string[]) =>
        `Invoke-Make ${powershellQuoted(work.result)} ${wordList(words)}`;
      if (work.olderWords === undefined) return [make(work.words)];
      return [
        ...comment(['The name of one switch changed with version 7 of the program.']),
        `$major = 7`,
        `if ($version -match 'version n?([0-9]+)[.]') { $major = [int]$Matches[1] }`,
        `if ($major -ge 7) { ${make(work.words)} }`,
        `else { ${make(work.olderWords)} }`,
      ];
    }
    case 'write':
      return [
        `$list = @'`,
        work.text.trimEnd(),
        `'@`,
        `[IO.File]::WriteAllText((Get-Place ${powershellQuoted(work.result)}), $list + [char]10)`,
      ];
    case 'count-pictures':
      return [
        `$there = @(Get-Content -LiteralPath ${powershellQuoted(FILE_NAMES.pictureChecksums)} | Where-Object { $_.StartsWith('0,') }).Count`,
        `if ($there -ne ${work.filmFrames}) { ${stop(TROUBLE.wrongCount, `('${work.filmFrames}, ' + $there)`)} }`,
        `Show-Line ('  all there: ' + $there)`,
      ];
    case 'read-master':
      return [
        `$said = ((Get-Said ${wordList(asked.readMaster)} $script:trouble) -join ' ').Trim()`,
        `if ($said -ne '') { ${stop(TROUBLE.damaged, '$said')} }`,
      ];
    case 'measure-viewing':
      return [
        `$lasts = Get-Rate (((Get-Answer ${wordList(asked.viewingSeconds)} $script:trouble) -join ' ').Trim())`,
        `if ([Math]::Abs($lasts - ${work.seconds.toFixed(6)}) -gt ${work.bySeconds.toFixed(6)}) { ${stop(TROUBLE.wrongLength, `('${work.seconds.toFixed(3)}, ' + $lasts.ToString($invariant))`)} }`,
        `Show-Line ('  lasts: ' + $lasts.ToString($invariant) + ' s')`,
      ];
    case 'remove':
      return [`Remove-Item -LiteralPath ${work.files.map(powershellQuoted).join(', ')}`];
  }
}

const CHECKSUMS = [
  CHECKSUM_COMMANDS.windows,
  `if (-not (Test-Path -LiteralPath '${FILE_NAMES.fileChecksums}')) { ${stop(TROUBLE.noChecksums)} }`,
  `$checked = @(${VERIFY_COMMANDS.windows})`,
  `$checked | ForEach-Object { Write-Host $_ }`,
  `if (@($checked | Where-Object { $_.EndsWith(': FAILED') }).Count -gt 0) { ${stop(TROUBLE.badChecksums)} }`,
];

/** How a script is let run: Windows refuses every script until it is told otherwise. */
const PREPARATION = [
  'The call lets this one script run; the settings of Windows stay as they are.',
  'The makers of this script have not run it on Windows: try it with a short recording.',
];

/** The chain of one reel in the words of PowerShell 5.1 and later. */
export const POWERSHELL_WRITER: ShellWriter = {
  firstLines: [],
  call: `powershell -ExecutionPolicy Bypass -File .\\${FILE_NAMES.powershellScript}`,
  preparation: PREPARATION,
  settings,
  functions: FUNCTIONS,
  say: (sentence) => `Show-Line ${powershellQuoted(sentence)}`,
  firstChecks,
  describe,
  countPictures,
  lookForFields,
  sampleRate,
  drawLook,
  beginStep: ({ title, trouble }) =>
    `Start-Step ${powershellQuoted(title)} ${powershellQuoted(trouble)}`,
  work: workLines,
  endLog: `$script:log = ''`,
  checksums: CHECKSUMS,
};
