import { FILE_NAMES } from './file-names.ts';
import type { CommandShell, PacketDropCommands } from './packet-drop-commands.ts';

/**
 * The commands that copy the kept frames in parts as one file to run: each part, the list of the parts
 * and the command that joins them. It stops at the first that fails, and writes over nothing.
 *
 * Model: a batch file has the line length of the command prompt, so no line is longer than the commands
 * themselves and the few signs behind them.
 *
 * @param made   commands in parts, with the command that joins them
 * @param shell  which shell runs the file
 * @returns the text: line feeds for a POSIX shell, carriage returns with them for Windows
 * @source posix-shell
 */
export function packetDropScript(made: Required<PacketDropCommands>, shell: CommandShell): string {
  const { commands, join } = made;
  const parts = join?.listText.trimEnd().split('\n') ?? [];
  const all = [...commands, ...(join === undefined ? [] : [join.command])];
  const quiet = (command: string): string => command.replace(/^ffmpeg /u, 'ffmpeg -nostdin -n ');
  if (shell === 'posix') {
    const list = parts.map(
      (line, at) => `echo "${line}" ${at === 0 ? '>' : '>>'} ${FILE_NAMES.partList}`,
    );
    return `${['#!/bin/sh', 'set -e', ...list, ...all.map(quiet)].join('\n')}\n`;
  }
  const list = parts.map(
    (line, at) => `${at === 0 ? '>' : '>>'}${FILE_NAMES.partList} echo ${line}`,
  );
  const lines = ['@echo off', ...list, ...all.map((each) => `${quiet(each)} || exit /b 1`)];
  return `${lines.join('\r\n')}\r\n`;
}
