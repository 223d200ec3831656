/**
 * The page that starts VS Code for the web. Everything it names is on the server that serves it.
 *
 * @param {{ authority: string, settings: Record<string, unknown>, opens?: string }} given host and port, settings beside the usual,
 * and the file that is open at first
 */
export function workbenchPage({ authority, settings, opens }) {
  const product = {
    productConfiguration: {
      nameShort: "Seatwright",
      nameLong: "Seatwright in VS Code for the web",
      applicationName: "seatwright",
      version: "1.91.1",
      enableTelemetry: false,
      // The usual address is on the internet; ours serves the same pages. Each webview has a host of its own.
      webviewContentExternalBaseUrlTemplate: `http://{{uuid}}.${authority}/vscode/out/vs/workbench/contrib/webview/browser/pre/`,
    },
    folderUri: { scheme: "memory", path: "/chairs" },
    ...(opens && { defaultLayout: { editors: [{ uri: { scheme: "memory", path: `/chairs/${opens}` } }] } }),
    additionalBuiltinExtensions: [
      { scheme: "http", authority, path: "/memory-files" },
      { scheme: "http", authority, path: "/extension" },
    ],
    configurationDefaults: {
      "workbench.startupEditor": "none",
      "workbench.tips.enabled": false,
      "telemetry.telemetryLevel": "off",
      "extensions.ignoreRecommendations": true,
      ...settings,
    },
    enableWorkspaceTrust: false,
  };
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Seatwright</title>
<link rel="stylesheet" href="/vscode/out/vs/workbench/workbench.web.main.css">
</head>
<body aria-label="">
<script>window.product = ${JSON.stringify(product).replaceAll("<", "\\u003c")};</script>
<script src="/vscode/out/vs/loader.js"></script>
<script src="/vscode/out/vs/webPackagePaths.js"></script>
<script>
for (const name of Object.keys(self.webPackagePaths)) {
  self.webPackagePaths[name] = location.origin + "/vscode/node_modules/" + name + "/" + self.webPackagePaths[name];
}
require.config({
  baseUrl: location.origin + "/vscode/out",
  recordStats: true,
  trustedTypesPolicy: window.trustedTypes?.createPolicy("amdLoader", { createScriptURL: (value) => value }),
  paths: self.webPackagePaths,
});
</script>
<script src="/vscode/out/vs/workbench/workbench.web.main.nls.js"></script>
<script src="/vscode/out/vs/workbench/workbench.web.main.js"></script>
<script src="/vscode/out/vs/code/browser/workbench/workbench.js"></script>
</body>
</html>
`;
}
