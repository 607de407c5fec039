import { Module, type DynamicModule, type Provider } from '@nestjs/common';
import { CommandsController } from './http/commands.controller.js';
import { DemoController } from './http/demo.controller.js';
import { DocsController } from './http/docs.controller.js';
import { HealthController } from './http/health.controller.js';
import { PhotosController } from './http/photos.controller.js';
import { SessionController } from './http/session.controller.js';
import { ViewsModule } from './http/views/views.module.js';
import { LiveModule } from './live/live.module.js';

/**
 * What Nest puts together: the controllers and gateways, on the parts that start.ts made. Reads and the live gateway
 * are modules of their own, added here.
 */
@Module({})
export class AppModule {
  static of(parts: Provider[]): DynamicModule {
    return {
      module: AppModule,
      global: true,
      imports: [LiveModule, ViewsModule],
      providers: parts,
      exports: parts,
      controllers: [
        CommandsController,
        SessionController,
        PhotosController,
        DemoController,
        HealthController,
        DocsController,
      ],
    };
  }
}
