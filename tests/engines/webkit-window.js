// The WebKit browser of `npm run engines`, run by gjs: a window that may be driven and that keeps what its pages keep.
// Arguments: the folder of its profile, and the folder for downloads and printed pages.
import Gio from 'gi://Gio';
import GLib from 'gi://GLib';
import Gtk from 'gi://Gtk?version=3.0';
import WebKit2 from 'gi://WebKit2?version=4.1';
import { programArgs } from 'system';

const [profile, outbox] = programArgs;
const inOutbox = (name) => Gio.File.new_for_path(GLib.build_filenamev([outbox, name]));

Gtk.init(null);
const context = WebKit2.WebContext.new_with_website_data_manager(
  new WebKit2.WebsiteDataManager({
    base_data_directory: GLib.build_filenamev([profile, 'data']),
    base_cache_directory: GLib.build_filenamev([profile, 'cache']),
  }),
);
context.set_automation_allowed(true);

context.connect('download-started', (_context, download) => {
  download.connect('decide-destination', (_download, name) => {
    download.set_destination(inOutbox(name).get_uri());
    return true;
  });
});

/** What the page prints becomes a file, without the dialog. */
function printToFile(view) {
  const unfinished = inOutbox('printed.part');
  const settings = new Gtk.PrintSettings();
  settings.set_printer('Print to File');
  settings.set(Gtk.PRINT_SETTINGS_OUTPUT_FILE_FORMAT, 'pdf');
  settings.set(Gtk.PRINT_SETTINGS_OUTPUT_URI, unfinished.get_uri());
  const operation = new WebKit2.PrintOperation({ web_view: view, print_settings: settings });
  operation.connect('failed', (_operation, error) => printerr(error.message));
  operation.connect('finished', () => {
    unfinished.move(inOutbox('printed.pdf'), Gio.FileCopyFlags.OVERWRITE, null, null);
  });
  operation.print();
}

function openView() {
  // A view that is driven does nothing when its page asks to be printed: the page asks this window instead.
  const pageContent = new WebKit2.UserContentManager();
  pageContent.register_script_message_handler('print');
  pageContent.add_script(
    WebKit2.UserScript.new(
      "window.print = () => window.webkit.messageHandlers.print.postMessage('');",
      WebKit2.UserContentInjectedFrames.TOP_FRAME,
      WebKit2.UserScriptInjectionTime.START,
      null,
      null,
    ),
  );
  const view = new WebKit2.WebView({
    web_context: context,
    user_content_manager: pageContent,
    is_controlled_by_automation: true,
    settings: new WebKit2.Settings({ enable_media_stream: true }),
  });
  pageContent.connect('script-message-received::print', () => printToFile(view));
  view.connect('permission-request', (_view, request) => {
    request.allow();
    return true;
  });
  const window = new Gtk.Window({ default_width: 420, default_height: 860 });
  window.add(view);
  window.show_all();
  return view;
}

context.connect('automation-started', (_context, session) => {
  const about = new WebKit2.ApplicationInfo();
  about.set_name('WebKitGTK');
  about.set_version(
    WebKit2.get_major_version(),
    WebKit2.get_minor_version(),
    WebKit2.get_micro_version(),
  );
  session.set_application_info(about);
  session.connect('create-web-view', openView);
});

Gtk.main();
