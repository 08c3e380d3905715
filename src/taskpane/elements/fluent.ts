// The web components of the pane. Each import registers one; nothing else of the library is carried along.
import "@fluentui/web-components/button.js";
import "@fluentui/web-components/checkbox.js";
import "@fluentui/web-components/menu.js";
import "@fluentui/web-components/menu-item.js";
import "@fluentui/web-components/menu-list.js";
import "@fluentui/web-components/progress-bar.js";
import "@fluentui/web-components/tab.js";
import "@fluentui/web-components/tablist.js";
import "@fluentui/web-components/text-input.js";
