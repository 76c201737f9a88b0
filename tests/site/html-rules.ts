import type { ConfigData } from 'html-validate/node';

/** Rules for the built pages; each relaxed one with its reason. */
export const htmlRules: ConfigData = {
  root: true,
  extends: ['html-validate:standard', 'html-validate:a11y', 'html-validate:document'],
  elements: [
    'html5',
    {
      // Our own element around a live worksheet; its content is a form in the flow of the text.
      'worksheet-form': { flow: true, permittedContent: ['@flow'] },
    },
  ],
  rules: {
    // Every file is our own; the content security policy admits no other host.
    'require-sri': 'off',
    // A worksheet answers while the reader types: there is nothing to submit.
    'wcag/h32': 'off',
    // The frame in which a wide table scrolls is a region by name only, without a heading of its own.
    'prefer-native-element': ['error', { exclude: ['region'] }],
    // The build decides how a doctype is written.
    'doctype-style': 'off',
    // Spaces are the build's to keep or drop.
    'no-trailing-whitespace': 'off',
    // Both `<meta>` and `<meta />` are valid; the build writes one of them.
    'void-style': 'off',
  },
};
