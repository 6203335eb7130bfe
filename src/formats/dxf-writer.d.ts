/** The global counter from which dxf-writer takes its handles; the package does not type it. */
declare module "dxf-writer/src/Handle.js" {
  const Handle: { seed: number };
  export default Handle;
}
