// A query parameter is described by its schema; the viewer shows only what stands beside the parameter itself.
function described(contract) {
  const target = (reference) => reference.slice(2).split("/")
    .reduce((at, name) => at[name.replaceAll("~1", "/").replaceAll("~0", "~")], contract);
  const description = (schema) => schema.description ?? (schema.$ref && description(target(schema.$ref)));
  for (const path of Object.values(contract.paths)) {
    for (const operation of Object.values(path)) {
      for (const parameter of operation.parameters ?? []) {
        if (parameter.schema && !parameter.description) {
          parameter.description = description(parameter.schema);
        }
      }
    }
  }
  return contract;
}

SwaggerUIBundle({
  url: "/openapi.json",
  dom_id: "#contract",
  deepLinking: true,
  docExpansion: "none",
  defaultModelsExpandDepth: -1,
  validatorUrl: null,
  tryItOutEnabled: true,
  plugins: [{
    statePlugins: {
      spec: { wrapActions: { updateJsonSpec: (original) => (contract) => original(described(contract)) } },
    },
  }],
});
