// The npm package "node" puts a Node 24 first on the path of every npm script.
// Where its platform has no such binary the host's own Node is used silently, so this says so.
const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
if (major < 22 || (major === 22 && minor < 12)) {
  console.error(
    `This needs Node 22.12 or newer to build, but npm scripts here run Node ${process.versions.node}: ` +
      'install Node 22 or 24, or run "npm ci" again so that the optional package "node" is installed.',
  );
  process.exit(1);
}
