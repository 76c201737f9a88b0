import { firefox } from './firefox.ts';
import { smokeSuite } from './smoke-suite.ts';

smokeSuite(firefox);
