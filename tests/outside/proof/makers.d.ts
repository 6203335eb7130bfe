declare module "@jscad/dxf-serializer" {
  const serializer: {
    serialize(options: { geom2To?: "lwpolyline" | "polyline" }, ...objects: readonly unknown[]): readonly string[];
  };
  export default serializer;
}
