import fc from 'fast-check';
import { turn } from './turn.ts';

// What is drawn at random is drawn by the turn, so that a run can be repeated as a whole.
fc.configureGlobal({ seed: turn });
