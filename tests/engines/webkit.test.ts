import { webkit } from './webkit.ts';
import { smokeSuite } from './smoke-suite.ts';

smokeSuite(webkit);
