SwaggerUIBundle({
  url: "/openapi.yaml",
  dom_id: "#contract",
  deepLinking: true,
  validatorUrl: null,
  tryItOutEnabled: true,
});
