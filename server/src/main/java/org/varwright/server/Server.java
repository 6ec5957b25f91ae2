package org.varwright.server;

import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.Handler;
import io.javalin.http.HttpResponseException;
import io.javalin.util.JavalinBindException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.StandardOpenOption;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import org.varwright.disk.DiskTrouble;
import org.varwright.json.Json;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/** The server, from start to stop. */
public final class Server implements AutoCloseable {
    private static final System.Logger LOG = System.getLogger(Server.class.getName());
    private static final String LOOPBACK = "127.0.0.1";
    private static final String FAULT =
            "a fault in the server itself, not in what was sent; nothing was changed, what was sent is still on the device";

    private final Javalin javalin;
    private final Store store;
    private final FileChannel lockFile;

    private Server(Javalin javalin, Store store, FileChannel lockFile) {
        this.javalin = javalin;
        this.store = store;
        this.lockFile = lockFile;
    }

    /**
     * Starts on loopback, with everything in one folder.
     *
     * @throws VarwrightException {@code SERVER_FOLDER} where the folder can't be used, {@code SERVER_IN_USE} where another server has it, {@code SERVER_STORE_…} where its
     *     database can't be used, {@code SERVER_PORT} where the port is taken
     */
    public static Server start(ServerSettings settings) {
        return start(settings, AppFiles.under(AppFiles.FOLDER));
    }

    static Server start(ServerSettings settings, AppFiles app) {
        Place place = new Place(settings.data().toString(), 0, 0, "");
        try {
            Files.createDirectories(settings.data());
            FileChannel lockFile = FileChannel.open(
                    settings.data().resolve("lock"), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
            if (!isLocked(lockFile)) {
                lockFile.close();
                throw new VarwrightException(Message.SERVER_IN_USE, place);
            }
            boolean started = false;
            try {
                Attachments attachments = Attachments.in(settings.data().resolve("attachments"));
                Store store = Store.open(settings.data().resolve("varwright.sqlite"));
                try {
                    Server server = new Server(listen(settings.port(), store, attachments, app), store, lockFile);
                    started = true;
                    return server;
                } finally {
                    if (!started) {
                        store.close();
                    }
                }
            } finally {
                if (!started) {
                    lockFile.close();
                }
            }
        } catch (IOException e) {
            throw new VarwrightException(Message.SERVER_FOLDER, place, DiskTrouble.of(e));
        }
    }

    /** Takes the folder for this server; the lock goes with the open file. */
    private static boolean isLocked(FileChannel file) throws IOException {
        try {
            return file.tryLock() != null;
        } catch (OverlappingFileLockException e) {
            return false;
        }
    }

    private static Javalin listen(int port, Store store, Attachments attachments, AppFiles app) {
        Javalin javalin = Javalin.create(Server::configure);
        javalin.before(context -> {
            Guard.harden(context);
            Guard.check(context);
        });
        read(javalin, "/healthz", Server::health);
        read(javalin, "/api/openapi.yaml", Server::openApi);
        BankRoutes banks = new BankRoutes(store);
        read(javalin, "/api/banks", banks::list);
        read(javalin, "/api/banks/{bank}", banks::get);
        javalin.put("/api/banks/{bank}", banks::put);
        ToldJobs told = new ToldJobs(store);
        JobRoutes jobs = new JobRoutes(store, told);
        read(javalin, "/api/jobs", jobs::list);
        read(javalin, "/api/jobs/{job}", jobs::get);
        read(javalin, "/api/jobs/{job}/events", jobs::events);
        javalin.post("/api/jobs/{job}/events", jobs::add);
        ReportRoutes reports = new ReportRoutes(told, attachments);
        read(javalin, "/api/jobs/{job}/report.pdf", reports::pdf);
        read(javalin, "/api/jobs/{job}/report.xlsx", reports::workbook);
        read(javalin, "/api/jobs/{job}/report.json", reports::json);
        read(javalin, "/api/jobs/{job}/archive", new ArchiveRoutes(told, attachments)::get);
        AttachmentRoutes files = new AttachmentRoutes(attachments);
        read(javalin, "/api/attachments/{sha256}", files::get);
        javalin.put("/api/attachments/{sha256}", files::put);
        AppRoutes pages = new AppRoutes(app);
        read(javalin, "/", pages::get);
        read(javalin, "/<path>", pages::get);
        javalin.exception(Refusal.class, Server::refuse);
        javalin.exception(
                HttpResponseException.class,
                (e, context) -> refuse(Refusal.of(e.getStatus(), refused(context)), context));
        javalin.exception(Exception.class, Server::failed);
        javalin.error(404, context -> {
            if (context.result() == null
                    || Objects.requireNonNull(context.result()).isEmpty()) {
                refuse(Refusal.of(404, refused(context)), context);
            }
        });
        try {
            return javalin.start(LOOPBACK, port);
        } catch (JavalinBindException e) {
            throw new VarwrightException(Message.SERVER_PORT, Place.NOWHERE, String.valueOf(port));
        }
    }

    private static void failed(Exception e, Context context) {
        String request = context.method() + " " + context.path();
        Optional<StorageFault> fault = StorageFault.of(e);
        if (fault.isPresent()) {
            LOG.log(
                    System.Logger.Level.ERROR,
                    request + ": " + fault.get().refusal().getMessage());
            refuse(fault.get().refusal(), context);
        } else {
            LOG.log(System.Logger.Level.ERROR, request, e);
            refuse(Refusal.of(500, FAULT), context);
        }
    }

    /** HEAD tells the same as GET; the body is left away beneath. */
    private static void read(Javalin javalin, String path, Handler handler) {
        javalin.get(path, handler);
        javalin.head(path, handler);
    }

    private static void configure(JavalinConfig config) {
        config.showJavalinBanner = false;
        config.jetty.modifyServer(server -> server.setErrorHandler(new BadMessages()));
    }

    private static String refused(Context context) {
        return context.method() + " " + context.path()
                + " is nothing that this server answers; /api/openapi.yaml lists what it does";
    }

    private static void refuse(Refusal refusal, Context context) {
        context.status(refusal.status()).contentType(Refusal.MEDIA_TYPE).result(refusal.json());
    }

    private static void health(Context context) {
        Answers.json(context, Json.object().put("status", "ok").build());
    }

    private static void openApi(Context context) throws IOException {
        context.contentType("application/yaml; charset=utf-8").result(openApiText());
    }

    /** The description of the API, as it is served. */
    static String openApiText() throws IOException {
        try (InputStream in = Objects.requireNonNull(Server.class.getResourceAsStream("openapi.yaml"))) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    /** {@code http://127.0.0.1:PORT/}. */
    public String address() {
        return String.format(Locale.ROOT, "http://%s:%d/", LOOPBACK, javalin.port());
    }

    /** Lets running requests end, then stops. Stopping twice does no harm. */
    @Override
    public void close() {
        if (!lockFile.isOpen()) {
            return;
        }
        javalin.stop();
        store.close();
        try {
            lockFile.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
